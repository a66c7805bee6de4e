package chainwright.dsp.loudness;

/**
 * The gain that makes one recording as loud as another, so that they can be compared without the
 * louder one seeming better.
 *
 * <p>The gain is the difference of the integrated loudness, held back where the true peak would
 * rise above a ceiling. Source: the difference, ITU-R BS.1770-5 loudness is linear in dB; to
 * compare at equal loudness, common practice, no source.
 *
 * @param gainDb the gain to apply [dB]
 * @param heldBackDb how much more it would take to be as loud [dB], ≥ 0; above 0 where the ceiling
 *     holds the gain back
 */
public record LevelMatch(double gainDb, double heldBackDb) {

  /** No gain, where there is nothing to be matched. */
  public static final LevelMatch NONE = new LevelMatch(0, 0);

  /**
   * Finds the gain that makes a recording as loud as a reference.
   *
   * @param referenceLufs the integrated loudness of the reference [LUFS]
   * @param ownLufs the integrated loudness of the recording [LUFS]
   * @param ownTruePeakDbtp its true peak [dBTP]
   * @param ceilingDbtp what its true peak may rise to, +∞ for any; a peak that is above already is
   *     not turned down for it
   * @return the gain; none if either is silent or too short to have a loudness
   */
  public static LevelMatch to(
      double referenceLufs, double ownLufs, double ownTruePeakDbtp, double ceilingDbtp) {
    double wanted = referenceLufs - ownLufs;
    if (!Double.isFinite(referenceLufs) || !Double.isFinite(ownLufs)) {
      return NONE;
    }
    double highest = Math.max(0, ceilingDbtp - ownTruePeakDbtp);
    double gain = Math.min(wanted, highest);
    return new LevelMatch(gain, wanted - gain);
  }

  /**
   * Finds the gain for a recording that is compared with another: the louder one is turned down,
   * the softer one left as it is, so that nothing clips and nothing gets louder than it was.
   *
   * @param ownLufs the integrated loudness of the recording [LUFS]
   * @param otherLufs the integrated loudness of the other [LUFS]
   * @return the gain, at most 0 dB; none if either is silent or too short to have a loudness
   */
  public static LevelMatch turningDown(double ownLufs, double otherLufs) {
    return new LevelMatch(
        Math.min(0, to(otherLufs, ownLufs, 0, Double.POSITIVE_INFINITY).gainDb), 0);
  }
}
