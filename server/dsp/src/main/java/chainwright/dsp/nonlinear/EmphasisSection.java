package chainwright.dsp.nonlinear;

import chainwright.dsp.filter.BiquadCoefficients;

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

  /** Whether the filter changes nothing. */
  boolean isFlat() {
    return equals(flat());
  }

  /**
   * Returns the filter at a sample rate [Hz], by the bilinear transform without prewarping.
   *
   * <p>Source: the bilinear transform, s = (fs/π)(1 − z⁻¹)/(1 + z⁻¹) with s in Hz.
   */
  BiquadCoefficients design(double sampleRateHz) {
    double k = sampleRateHz / Math.PI;
    double k2 = k * k;
    double d0 = a0 + a1 * k + a2 * k2;
    return new BiquadCoefficients(
        (b0 + b1 * k + b2 * k2) / d0,
        2 * (b0 - b2 * k2) / d0,
        (b0 - b1 * k + b2 * k2) / d0,
        2 * (a0 - a2 * k2) / d0,
        (a0 - a1 * k + a2 * k2) / d0);
  }
}
