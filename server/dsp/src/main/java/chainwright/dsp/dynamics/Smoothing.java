package chainwright.dsp.dynamics;

/**
 * How attack and release share the smoothing of a gain reduction.
 *
 * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES 60(6),
 * 2012, eq. 16 and 17.
 */
public enum Smoothing {
  /** One pole, with the attack's constant while the reduction must grow, else the release's. */
  BRANCHING,

  /**
   * A release that keeps the peaks, then an attack that smooths everything: the gain has no corner,
   * and recovers in about attack plus release.
   */
  DECOUPLED
}
