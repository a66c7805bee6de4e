package chainwright.app.render;

import chainwright.app.audiofile.WriteSummary;
import chainwright.engine.sound.MeasuredLevel;

/**
 * What was rendered.
 *
 * @param channels how many channels the file has
 * @param written what became of the samples
 * @param tailFrames how many of its frames come after the end of the take
 * @param take the level of the part of the take that was rendered
 * @param asWritten the level of the render before the gain
 * @param gainDb the gain that was applied to it for its level [dB]
 * @param heldBackDb how much more it would have taken to be as loud as the take [dB], ≥ 0; held
 *     back for the true peak
 */
public record RenderReport(
    int channels,
    WriteSummary written,
    long tailFrames,
    MeasuredLevel take,
    MeasuredLevel asWritten,
    double gainDb,
    double heldBackDb) {}
