package chainwright.dsp.loudness;

/**
 * The standard's interpolation by four: a filter of 48 coefficients in four phases of 12.
 *
 * <p>Source: ITU-R BS.1770-5, Annex 2, table of the order-48, 4-phase interpolating FIR. The phases
 * lie 1/8, 3/8, 5/8 and 7/8 of the way from one sample to the next, so that the samples themselves
 * are not among what is read.
 */
final class Annex2Interpolator {

  /** How many samples before the last one a phase needs. */
  static final int REACH = 11;

  private static final double[] FIRST = {
    0.0017089843750,
    0.0109863281250,
    -0.0196533203125,
    0.0332031250000,
    -0.0594482421875,
    0.1373291015625,
    0.9721679687500,
    -0.1022949218750,
    0.0476074218750,
    -0.0266113281250,
    0.0148925781250,
    -0.0083007812500
  };

  private static final double[] SECOND = {
    -0.0291748046875,
    0.0292968750000,
    -0.0517578125000,
    0.0891113281250,
    -0.1665039062500,
    0.4650878906250,
    0.7797851562500,
    -0.2003173828125,
    0.1015625000000,
    -0.0582275390625,
    0.0330810546875,
    -0.0189208984375
  };

  /**
   * No phase exceeds the largest sample that it sees by more than this factor; the last digits are
   * for rounding.
   */
  static final double LARGEST_GAIN =
      Math.max(sumOfMagnitudes(FIRST), sumOfMagnitudes(SECOND)) * (1 + 1e-12);

  /*
   * The fourth phase is the first one reversed, the third the second. With the sums s(k) and the
   * differences d(k) of the samples that lie equally far from the middle, a phase and its reverse are
   * P + Q and P - Q, where P has the even part of the coefficients and Q the odd one. That halves the
   * products, and the larger of both magnitudes is |P| + |Q|.
   */

  private static final double E0 = even(FIRST, 0);
  private static final double E1 = even(FIRST, 1);
  private static final double E2 = even(FIRST, 2);
  private static final double E3 = even(FIRST, 3);
  private static final double E4 = even(FIRST, 4);
  private static final double E5 = even(FIRST, 5);
  private static final double O0 = odd(FIRST, 0);
  private static final double O1 = odd(FIRST, 1);
  private static final double O2 = odd(FIRST, 2);
  private static final double O3 = odd(FIRST, 3);
  private static final double O4 = odd(FIRST, 4);
  private static final double O5 = odd(FIRST, 5);
  private static final double F0 = even(SECOND, 0);
  private static final double F1 = even(SECOND, 1);
  private static final double F2 = even(SECOND, 2);
  private static final double F3 = even(SECOND, 3);
  private static final double F4 = even(SECOND, 4);
  private static final double F5 = even(SECOND, 5);
  private static final double P0 = odd(SECOND, 0);
  private static final double P1 = odd(SECOND, 1);
  private static final double P2 = odd(SECOND, 2);
  private static final double P3 = odd(SECOND, 3);
  private static final double P4 = odd(SECOND, 4);
  private static final double P5 = odd(SECOND, 5);

  private Annex2Interpolator() {}

  /**
   * Writes the largest magnitude of the four phases at each of some samples.
   *
   * @param x the samples; those from {@code from} − 11 on are read
   * @param largest where the magnitudes go, at the same indices
   */
  static void interpolate(double[] x, double[] largest, int from, int to) {
    for (int i = from; i < to; i++) {
      double s0 = x[i] + x[i - 11];
      double d0 = x[i] - x[i - 11];
      double s1 = x[i - 1] + x[i - 10];
      double d1 = x[i - 1] - x[i - 10];
      double s2 = x[i - 2] + x[i - 9];
      double d2 = x[i - 2] - x[i - 9];
      double s3 = x[i - 3] + x[i - 8];
      double d3 = x[i - 3] - x[i - 8];
      double s4 = x[i - 4] + x[i - 7];
      double d4 = x[i - 4] - x[i - 7];
      double s5 = x[i - 5] + x[i - 6];
      double d5 = x[i - 5] - x[i - 6];
      double outerEven = E0 * s0 + E1 * s1 + E2 * s2 + E3 * s3 + E4 * s4 + E5 * s5;
      double outerOdd = O0 * d0 + O1 * d1 + O2 * d2 + O3 * d3 + O4 * d4 + O5 * d5;
      double innerEven = F0 * s0 + F1 * s1 + F2 * s2 + F3 * s3 + F4 * s4 + F5 * s5;
      double innerOdd = P0 * d0 + P1 * d1 + P2 * d2 + P3 * d3 + P4 * d4 + P5 * d5;
      largest[i] =
          Math.max(
              Math.abs(outerEven) + Math.abs(outerOdd), Math.abs(innerEven) + Math.abs(innerOdd));
    }
  }

  /** Returns which phase, from 0 to 3, has the largest magnitude at a sample. */
  static int largestPhase(double[] x, int i) {
    int largest = 0;
    double magnitude = -1;
    for (int phase = 0; phase < 4; phase++) {
      double[] half = phase == 0 || phase == 3 ? FIRST : SECOND;
      double sum = 0;
      for (int k = 0; k <= REACH; k++) {
        sum += half[phase < 2 ? k : REACH - k] * x[i - k];
      }
      if (Math.abs(sum) > magnitude) {
        magnitude = Math.abs(sum);
        largest = phase;
      }
    }
    return largest;
  }

  private static double even(double[] h, int k) {
    return (h[k] + h[REACH - k]) / 2;
  }

  private static double odd(double[] h, int k) {
    return (h[k] - h[REACH - k]) / 2;
  }

  private static double sumOfMagnitudes(double[] h) {
    double sum = 0;
    for (double coefficient : h) {
      sum += Math.abs(coefficient);
    }
    return sum;
  }
}
