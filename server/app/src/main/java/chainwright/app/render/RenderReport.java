package chainwright.app.render;

import chainwright.app.audiofile.WriteSummary;
import chainwright.engine.sound.MeasuredLevel;
import java.util.Optional;

/**
 * What was rendered.
 *
 * @param channels how many channels the file has
 * @param written what became of the samples
 * @param tailFrames how many of its frames come after the end of the last take
 * @param takeCount how many takes it was made of
 * @param take the level of the part of the take that was rendered; of several the loudest, and the
 *     highest peak
 * @param asWritten the level of the render before the gain
 * @param gainDb the gain that was applied to it for its level [dB]
 * @param heldBackDb how much more it would have taken to be as loud as the take [dB], ≥ 0; held
 *     back for the true peak
 * @param stems what was written of stems, if they were wanted
 */
public record RenderReport(
    int channels,
    WriteSummary written,
    long tailFrames,
    int takeCount,
    MeasuredLevel take,
    MeasuredLevel asWritten,
    double gainDb,
    double heldBackDb,
    Optional<StemSummary> stems) {}
