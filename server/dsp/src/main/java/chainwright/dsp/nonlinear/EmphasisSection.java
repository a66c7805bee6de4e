package chainwright.dsp.nonlinear;

/**
 * The linear filter about a shaper, (b0 + b1 s + b2 s²) / (a0 + a1 s + a2 s²) with s = j f in Hz.
 *
 * <p>It is both the filter on paper, for harmonics, and the pattern of a running one.
 */
record EmphasisSection(double b0, double b1, double b2, double a0, double a1, double a2) {

  /** Returns the filter that changes nothing. */
  static EmphasisSection flat() {
    return new EmphasisSection(1, 0, 0, 1, 0, 0);
  }

  /** Returns the high shelf (1 + s/zero) / (1 + s/pole), 1 at low frequencies. */
  static EmphasisSection highShelf(double zeroHz, double poleHz) {
    return new EmphasisSection(1, 1 / zeroHz, 0, 1, 1 / poleHz, 0);
  }

  /** Returns the low shelf (s + zero) / (s + pole), 1 at high frequencies. */
  static EmphasisSection lowShelf(double zeroHz, double poleHz) {
    return new EmphasisSection(zeroHz, 1, 0, poleHz, 1, 0);
  }

  /** Returns the first-order high-pass s / (s + cutoff). */
  static EmphasisSection highPass(double cutoffHz) {
    return new EmphasisSection(0, 1, 0, cutoffHz, 1, 0);
  }

  /**
   * Returns a bell.
   *
   * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), peaking EQ prototype.
   */
  static EmphasisSection bell(double centreHz, double gainDb, double qualityFactor) {
    double a = Math.pow(10, gainDb / 40);
    double square = 1 / (centreHz * centreHz);
    double bandwidth = 1 / (qualityFactor * centreHz);
    return new EmphasisSection(1, a * bandwidth, square, 1, bandwidth / a, square);
  }

  /** Returns the gain and phase at a frequency. */
  Phasor at(double frequencyHz) {
    double square = frequencyHz * frequencyHz;
    return new Phasor(b0 - b2 * square, b1 * frequencyHz)
        .dividedBy(new Phasor(a0 - a2 * square, a1 * frequencyHz));
  }

  /** Returns the filter that undoes this one; it is stable where this one's zeros are. */
  EmphasisSection inverse() {
    return new EmphasisSection(a0, a1, a2, b0, b1, b2);
  }

  /** Starts a filter by the bilinear transform, without prewarping. */
  Running newFilter(double sampleRateHz) {
    return new Running(this, sampleRateHz);
  }

  /** A running filter of one channel, in transposed direct form II. */
  static final class Running {
    private final double n0;
    private final double n1;
    private final double n2;
    private final double d1;
    private final double d2;
    private double z1;
    private double z2;

    /** Source: the bilinear transform, s = (fs/π)(1 − z⁻¹)/(1 + z⁻¹) with s in Hz. */
    private Running(EmphasisSection section, double sampleRateHz) {
      double k = sampleRateHz / Math.PI;
      double k2 = k * k;
      double d0 = section.a0 + section.a1 * k + section.a2 * k2;
      n0 = (section.b0 + section.b1 * k + section.b2 * k2) / d0;
      n1 = 2 * (section.b0 - section.b2 * k2) / d0;
      n2 = (section.b0 - section.b1 * k + section.b2 * k2) / d0;
      d1 = 2 * (section.a0 - section.a2 * k2) / d0;
      d2 = (section.a0 - section.a1 * k + section.a2 * k2) / d0;
    }

    double process(double sample) {
      double output = n0 * sample + z1;
      z1 = settled(n1 * sample - d1 * output + z2);
      z2 = settled(n2 * sample - d2 * output);
      return output;
    }

    void reset() {
      z1 = 0;
      z2 = 0;
    }

    /** A decay must not end in denormal numbers, which are slow. */
    private static double settled(double state) {
      return Math.abs(state) < 1e-30 ? 0 : state;
    }
  }
}
