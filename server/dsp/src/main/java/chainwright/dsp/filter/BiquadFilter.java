package chainwright.dsp.filter;

import java.util.Objects;

/**
 * One second-order section at work on one channel: the state that a {@link BiquadCoefficients}
 * needs to run.
 *
 * <p>Silence in gives, after the section has come to rest, exact silence out. NaN in the signal
 * stays in the state until {@link #reset}. Not thread-safe.
 */
public final class BiquadFilter {

  /*
   * Transposed direct form II. A section at rest in digital silence decays into subnormal numbers,
   * which are slow; state below any audible meaning is therefore set to 0. This happens at fixed
   * places in the stream, not at the ends of blocks, so that the output does not depend on their size.
   */

  private static final int SAMPLES_BETWEEN_CHECKS = 256;

  /** Far below the rounding of any signal, far above the subnormal numbers. */
  private static final double AT_REST = 1e-200;

  private final BiquadCoefficients coefficients;
  private double first;
  private double second;
  private int samplesToCheck = SAMPLES_BETWEEN_CHECKS;

  /**
   * Makes a section at rest.
   *
   * @param coefficients the design
   */
  public BiquadFilter(BiquadCoefficients coefficients) {
    this.coefficients = coefficients;
  }

  /**
   * Filters samples in place, going on where the last block ended.
   *
   * @param samples the channel's samples, overwritten from {@code from} to before {@code to}
   * @param from the index of the first sample
   * @param to the index after the last sample; an empty block changes nothing
   * @throws IndexOutOfBoundsException if the block does not lie within the array
   */
  public void process(double[] samples, int from, int to) {
    Objects.checkFromToIndex(from, to, samples.length);
    int start = from;
    while (start < to) {
      int end = Math.min(to, start + samplesToCheck);
      run(samples, start, end);
      samplesToCheck -= end - start;
      if (samplesToCheck == 0) {
        samplesToCheck = SAMPLES_BETWEEN_CHECKS;
        if (Math.abs(first) < AT_REST && Math.abs(second) < AT_REST) {
          first = 0;
          second = 0;
        }
      }
      start = end;
    }
  }

  private void run(double[] samples, int from, int to) {
    double b0 = coefficients.b0();
    double b1 = coefficients.b1();
    double b2 = coefficients.b2();
    double a1 = coefficients.a1();
    double a2 = coefficients.a2();
    double s1 = first;
    double s2 = second;
    for (int i = from; i < to; i++) {
      double x = samples[i];
      double y = b0 * x + s1;
      s1 = b1 * x - a1 * y + s2;
      s2 = b2 * x - a2 * y;
      samples[i] = y;
    }
    first = s1;
    second = s2;
  }

  /** Brings the section to rest, as if new. */
  public void reset() {
    first = 0;
    second = 0;
    samplesToCheck = SAMPLES_BETWEEN_CHECKS;
  }
}
