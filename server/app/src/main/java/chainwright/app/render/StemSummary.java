package chainwright.app.render;

import java.nio.file.Path;

/**
 * What was written of stems.
 *
 * @param folder the folder that holds them
 * @param files how many files it holds
 * @param clippedSamples how many samples of them lay outside what integers hold
 */
public record StemSummary(Path folder, int files, long clippedSamples) {}
