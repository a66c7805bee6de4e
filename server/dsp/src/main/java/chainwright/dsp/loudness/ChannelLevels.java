package chainwright.dsp.loudness;

/**
 * The levels of one channel.
 *
 * @param samplePeakDbfs the largest magnitude of a sample [dBFS]; negative infinity for silence
 * @param rmsDbfs the level of the whole, its offset included [dBFS, sine-referenced: a full-scale
 *     sine has 0]; negative infinity for silence. Source: AES17-2020, 3.12.3
 * @param crestDb the peak over the RMS, not sine-referenced [dB]: 3.01 for a sine, 0 for a square
 *     wave; NaN for silence
 * @param offsetAmplitude the mean, known as DC offset [full scale = 1]; 0 for an empty recording
 * @param noiseFloorDbfs the level that a tenth of all stretches of 50 ms stay below [dBFS,
 *     sine-referenced], each without its mean, those of digital silence left out; negative infinity
 *     if all are, NaN if the recording is shorter than one. Common practice, no source
 * @param clipped where the channel stays at full scale
 */
public record ChannelLevels(
    double samplePeakDbfs,
    double rmsDbfs,
    double crestDb,
    double offsetAmplitude,
    double noiseFloorDbfs,
    ClippedRuns clipped) {}
