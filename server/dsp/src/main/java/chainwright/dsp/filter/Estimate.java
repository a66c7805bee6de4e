package chainwright.dsp.filter;

/**
 * A magnitude that is known without designing the filter.
 *
 * @param decibels the magnitude [dB]
 * @param errorDb how far it may be off [dB], 0 or more
 */
public record Estimate(double decibels, double errorDb) {

  /**
   * Returns the lowest that the magnitude can be.
   *
   * @return the magnitude [dB]
   */
  public double leastDb() {
    return decibels - errorDb;
  }

  /**
   * Returns the highest that the magnitude can be.
   *
   * @return the magnitude [dB]
   */
  public double mostDb() {
    return decibels + errorDb;
  }
}
