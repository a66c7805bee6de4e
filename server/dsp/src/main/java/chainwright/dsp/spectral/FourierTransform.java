package chainwright.dsp.spectral;

/**
 * The discrete Fourier transform of rows of real numbers whose length is a power of two.
 *
 * <p>Source: J. W. Cooley, J. W. Tukey, "An Algorithm for the Machine Calculation of Complex
 * Fourier Series", Mathematics of Computation 19, 1965; two real rows as one complex one: A. V.
 * Oppenheim and R. W. Schafer, Discrete-Time Signal Processing, problems of chapter 9; both from
 * memory.
 *
 * <p>The libraries that would do the same bring more than 3 MB of classes to a jar whose size the
 * start of the server depends on.
 */
public final class FourierTransform {

  private final int half;
  private final int[] reversed;

  /** cos and −sin of 2πk / length, for k below half the length. */
  private final double[] cosines;

  private final double[] sines;
  private final double[] workRe;
  private final double[] workIm;

  /**
   * Prepares a transform.
   *
   * @param length how many real numbers it takes, a power of two, ≥ 4
   * @throws IllegalArgumentException if the length is no such power
   */
  public FourierTransform(int length) {
    if (length < 4 || Integer.bitCount(length) != 1) {
      throw new IllegalArgumentException(
          "the length must be a power of two from 4 on, but was " + length);
    }
    half = length / 2;
    reversed = new int[half];
    int shift = Integer.numberOfLeadingZeros(half) + 1;
    for (int i = 0; i < half; i++) {
      reversed[i] = Integer.reverse(i) >>> shift;
    }
    cosines = new double[half];
    sines = new double[half];
    for (int k = 0; k < half; k++) {
      cosines[k] = Math.cos(Math.PI * k / half);
      sines[k] = -Math.sin(Math.PI * k / half);
    }
    workRe = new double[half];
    workIm = new double[half];
  }

  /**
   * Returns how many frequencies a row has.
   *
   * @return half the length and one: from 0 to half the sample rate
   */
  public int binCount() {
    return half + 1;
  }

  /**
   * Transforms a row: X[k] = Σ x[n] e^(−2πikn/length).
   *
   * @param samples the row, unchanged
   * @param re receives the real parts, {@link #binCount} long
   * @param im receives the imaginary parts
   */
  public void forward(double[] samples, double[] re, double[] im) {
    // Even samples are the real row, odd ones the imaginary row of one transform half as long.
    for (int n = 0; n < half; n++) {
      int to = reversed[n];
      workRe[to] = samples[2 * n];
      workIm[to] = samples[2 * n + 1];
    }
    butterflies(1);
    re[0] = workRe[0] + workIm[0];
    im[0] = 0;
    re[half] = workRe[0] - workIm[0];
    im[half] = 0;
    for (int k = 1; k < half; k++) {
      double evenRe = (workRe[k] + workRe[half - k]) / 2;
      double evenIm = (workIm[k] - workIm[half - k]) / 2;
      double oddRe = (workIm[k] + workIm[half - k]) / 2;
      double oddIm = (workRe[half - k] - workRe[k]) / 2;
      re[k] = evenRe + cosines[k] * oddRe - sines[k] * oddIm;
      im[k] = evenIm + cosines[k] * oddIm + sines[k] * oddRe;
    }
  }

  /**
   * Transforms back: what {@link #forward} made becomes the row again.
   *
   * @param re the real parts, unchanged
   * @param im the imaginary parts, unchanged; those of the first and the last count as 0
   * @param samples receives the row
   */
  public void inverse(double[] re, double[] im, double[] samples) {
    for (int k = 0; k < half; k++) {
      double mirroredIm = k == 0 ? 0 : -im[half - k];
      double ownIm = k == 0 ? 0 : im[k];
      double evenRe = (re[k] + re[half - k]) / 2;
      double evenIm = (ownIm + mirroredIm) / 2;
      double turnedRe = (re[k] - re[half - k]) / 2;
      double turnedIm = (ownIm - mirroredIm) / 2;
      double oddRe = cosines[k] * turnedRe + sines[k] * turnedIm;
      double oddIm = cosines[k] * turnedIm - sines[k] * turnedRe;
      int to = reversed[k];
      workRe[to] = evenRe - oddIm;
      workIm[to] = evenIm + oddRe;
    }
    butterflies(-1);
    for (int n = 0; n < half; n++) {
      samples[2 * n] = workRe[n] / half;
      samples[2 * n + 1] = workIm[n] / half;
    }
  }

  /** Joins transforms of 1 to those of 2, 4 and so on; the direction is the sign of the sines. */
  private void butterflies(int direction) {
    for (int size = 1; size < half; size *= 2) {
      int step = half / size;
      for (int k = 0; k < size; k++) {
        double c = cosines[k * step];
        double s = direction * sines[k * step];
        for (int a = k; a < half; a += 2 * size) {
          int b = a + size;
          double turnedRe = c * workRe[b] - s * workIm[b];
          double turnedIm = c * workIm[b] + s * workRe[b];
          workRe[b] = workRe[a] - turnedRe;
          workIm[b] = workIm[a] - turnedIm;
          workRe[a] += turnedRe;
          workIm[a] += turnedIm;
        }
      }
    }
  }
}
