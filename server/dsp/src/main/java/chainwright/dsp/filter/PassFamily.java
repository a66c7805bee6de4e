package chainwright.dsp.filter;

/**
 * The families of low-pass and high-pass filters, by what is made flat and what the cutoff means.
 */
public enum PassFamily {

  /**
   * Flattest magnitude; -3.01 dB at the cutoff.
   *
   * <p>Source: S. Butterworth, "On the Theory of Filter Amplifiers", 1930: {@code |H|^2 = 1 / (1 +
   * (f/fc)^2n)}.
   */
  BUTTERWORTH,

  /**
   * A Butterworth filter of half the order twice, for crossovers; -6.02 dB at the cutoff.
   *
   * <p>Source: S. Linkwitz and R. Riley, "Active Crossover Networks for Noncoincident Drivers",
   * JAES 24(1), 1976. Orders 2, 4, 6 and 8 only.
   */
  LINKWITZ_RILEY,

  /**
   * Flattest group delay of the low-pass; -3.01 dB at the cutoff.
   *
   * <p>Source: W. E. Thomson, "Delay Networks Having Maximally Flat Frequency Characteristics",
   * 1949; frequency scaled so that the magnitude at the cutoff is that of a Butterworth filter.
   */
  BESSEL_MAGNITUDE,

  /**
   * Flattest group delay of the low-pass; at the cutoff half of the whole phase, and far away the
   * asymptote of a Butterworth filter, so that the cutoff itself lies below -3 dB.
   *
   * <p>Source: as {@link #BESSEL_MAGNITUDE}; frequency scaled so that the poles' product is 1.
   */
  BESSEL_PHASE
}
