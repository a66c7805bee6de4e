package chainwright.engine.sound;

/**
 * How loud a sound is and how high it rises.
 *
 * @param integratedLufs its integrated loudness [LUFS]; negative infinity if it never rises above
 *     −70 LUFS, NaN if it is shorter than 0.4 s
 * @param truePeakDbtp its true peak [dBTP], the highest of all channels; negative infinity for
 *     silence
 */
public record MeasuredLevel(double integratedLufs, double truePeakDbtp) {

  /**
   * Returns the level of the same sound with a gain.
   *
   * @param gainDb the gain [dB]
   * @return the level, both figures higher by the gain
   */
  public MeasuredLevel plus(double gainDb) {
    return new MeasuredLevel(integratedLufs + gainDb, truePeakDbtp + gainDb);
  }
}
