package chainwright.dsp.loudness;

import chainwright.dsp.filter.BiquadCoefficients;
import chainwright.quantity.SampleRate;

/**
 * The two filters that loudness is measured through: a high shelf for the head, then a high-pass.
 *
 * <p>The standard prints coefficients for 48 kHz and asks for the same response at other rates.
 * Each printed section is taken back to the analogue domain by the inverse bilinear transform and
 * brought to the other rate by the bilinear transform that keeps the section's own frequency
 * √(p(0)/p(∞)) of its poles in place: 1682 Hz for the shelf, 38.1 Hz for the high-pass. At 48 kHz
 * that gives the printed numbers back. The high-pass keeps its numerator 1, −2, 1 at every rate, as
 * is usual, so that readings agree with those of others. Its level at high frequencies then depends
 * on the rate: relative to 48 kHz it is 0.004 dB more at 44.1 kHz, 0.022 dB less at 96 kHz, 0.038
 * dB less at 384 kHz, but 0.09 dB more at 16 kHz and 0.21 dB more at 8 kHz.
 *
 * <p>Source: ITU-R BS.1770-5, Annex 1, tables 1 and 2. The derivation for other rates is ours; the
 * widely used one from parameters fitted to the printed numbers gives the same.
 *
 * @param shelf the first stage
 * @param highPass the second stage; its numerator is 1, −2, 1
 */
public record KWeighting(BiquadCoefficients shelf, BiquadCoefficients highPass) {

  private static final double PRINTED_FOR_HZ = 48_000;

  private static final BiquadCoefficients PRINTED_SHELF =
      new BiquadCoefficients(
          1.53512485958697,
          -2.69169618940638,
          1.19839281085285,
          -1.69065929318241,
          0.73248077421585);

  private static final BiquadCoefficients PRINTED_HIGH_PASS =
      new BiquadCoefficients(1, -2, 1, -1.99004745483398, 0.99007225036621);

  /**
   * Designs the filters for a rate.
   *
   * @param rate the rate
   * @return the coefficients
   */
  public static KWeighting design(SampleRate rate) {
    BiquadCoefficients highPass = atRate(PRINTED_HIGH_PASS, rate);
    return new KWeighting(
        atRate(PRINTED_SHELF, rate),
        new BiquadCoefficients(1, -2, 1, highPass.a1(), highPass.a2()));
  }

  /**
   * With z⁻¹ = (1 − s)/(1 + s), b0 + b1 z⁻¹ + b2 z⁻² becomes, times (1 + s)², β0 + β1 s + β2 s²; at
   * the other rate s is scaled so that the poles' own frequency stays where it is.
   */
  private static BiquadCoefficients atRate(BiquadCoefficients printed, SampleRate rate) {
    double sum = (1 + printed.a1()) + printed.a2();
    double alternating = (1 - printed.a1()) + printed.a2();
    double printedWarp = Math.sqrt(sum / alternating);
    double ownHz = PRINTED_FOR_HZ / Math.PI * Math.atan(printedWarp);
    double scale = printedWarp / Math.tan(Math.PI * ownHz / rate.hertz());
    double[] b = scaled(printed.b0(), printed.b1(), printed.b2(), scale);
    double[] a = scaled(1, printed.a1(), printed.a2(), scale);
    return new BiquadCoefficients(b[0] / a[0], b[1] / a[0], b[2] / a[0], a[1] / a[0], a[2] / a[0]);
  }

  /** Returns the polynomial in z⁻¹ whose analogue form is the given one's, with s scaled. */
  private static double[] scaled(double p0, double p1, double p2, double scale) {
    double constant = ((p0 + p1) + p2) / 4;
    double linear = 2 * (p0 - p2) * scale / 4;
    double square = ((p0 - p1) + p2) * scale * scale / 4;
    return new double[] {
      constant + linear + square, 2 * (constant - square), constant - linear + square
    };
  }
}
