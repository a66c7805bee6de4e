package chainwright.dsp.loudness;

/**
 * How loud a recording is.
 *
 * <p>Negative infinity is silence, or a recording that never rose above −70 LUFS. NaN means that
 * the recording is shorter than the window: 0.4 s for momentary and integrated loudness, 3 s for
 * short-term loudness and range. The range is NaN, too, where no window rises above −70 LUFS.
 *
 * @param integratedLufs the gated loudness of the whole [LUFS]
 * @param relativeGateLufs the gate below which blocks were left out of it [LUFS]
 * @param momentaryMaxLufs the loudest 0.4 s, looked for every 10 ms [LUFS]
 * @param shortTermMaxLufs the loudest 3 s, looked for every 10 ms [LUFS]
 * @param rangeLu the loudness range [LU], ≥ 0
 */
public record LoudnessReading(
    double integratedLufs,
    double relativeGateLufs,
    double momentaryMaxLufs,
    double shortTermMaxLufs,
    double rangeLu) {}
