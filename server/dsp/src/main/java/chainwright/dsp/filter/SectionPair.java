package chainwright.dsp.filter;

import java.util.Arrays;

/**
 * Two second-order sections of a cascade, one after the other, at work on the channels of one
 * signal.
 */
final class SectionPair {

  /*
   * Transposed direct form II. Each output waits for the one before, by an addition, a
   * multiplication and a subtraction, so that one section on one channel leaves most of a processor
   * idle. Here the second section works on the sample before that of the first, and two channels
   * run side by side: four chains that do not wait for one another. Each block begins and ends with
   * one section alone, so that nothing waits between blocks.
   *
   * There is no Math.fma: four chains keep the multipliers busy without it, and where a processor
   * has none Java would compute it a thousand times slower.
   */

  /** Far below the rounding of any signal, far above the subnormal numbers. */
  private static final double AT_REST = 1e-200;

  private final BiquadCoefficients first;
  private final BiquadCoefficients second;

  /** The state of each channel: two numbers of the first section, two of the second. */
  private final double[][] states;

  SectionPair(BiquadCoefficients first, BiquadCoefficients second, int channelCount) {
    this.first = first;
    this.second = second;
    states = new double[channelCount][4];
  }

  /** Filters a block in place; each channel gets the same bits whatever stands beside it. */
  void process(double[][] channels, int from, int to) {
    if (from == to) {
      return;
    }
    int c = 0;
    for (; c + 1 < states.length; c += 2) {
      two(channels[c], states[c], channels[c + 1], states[c + 1], from, to);
    }
    if (c < states.length) {
      one(channels[c], states[c], from, to);
    }
  }

  private void two(
      double[] left, double[] leftState, double[] right, double[] rightState, int from, int to) {
    double b0 = first.b0();
    double b1 = first.b1();
    double b2 = first.b2();
    double a1 = first.a1();
    double a2 = first.a2();
    double d0 = second.b0();
    double d1 = second.b1();
    double d2 = second.b2();
    double c1 = second.a1();
    double c2 = second.a2();
    double l1 = leftState[0];
    double l2 = leftState[1];
    double l3 = leftState[2];
    double l4 = leftState[3];
    double r1 = rightState[0];
    double r2 = rightState[1];
    double r3 = rightState[2];
    double r4 = rightState[3];
    double l = b0 * left[from] + l1;
    l1 = (b1 * left[from] + l2) - a1 * l;
    l2 = b2 * left[from] - a2 * l;
    double r = b0 * right[from] + r1;
    r1 = (b1 * right[from] + r2) - a1 * r;
    r2 = b2 * right[from] - a2 * r;
    for (int i = from + 1; i < to; i++) {
      double leftOut = d0 * l + l3;
      l3 = (d1 * l + l4) - c1 * leftOut;
      l4 = d2 * l - c2 * leftOut;
      double rightOut = d0 * r + r3;
      r3 = (d1 * r + r4) - c1 * rightOut;
      r4 = d2 * r - c2 * rightOut;
      double leftIn = left[i];
      l = b0 * leftIn + l1;
      l1 = (b1 * leftIn + l2) - a1 * l;
      l2 = b2 * leftIn - a2 * l;
      double rightIn = right[i];
      r = b0 * rightIn + r1;
      r1 = (b1 * rightIn + r2) - a1 * r;
      r2 = b2 * rightIn - a2 * r;
      left[i - 1] = leftOut;
      right[i - 1] = rightOut;
    }
    double leftOut = d0 * l + l3;
    double rightOut = d0 * r + r3;
    left[to - 1] = leftOut;
    right[to - 1] = rightOut;
    leftState[0] = l1;
    leftState[1] = l2;
    leftState[2] = (d1 * l + l4) - c1 * leftOut;
    leftState[3] = d2 * l - c2 * leftOut;
    rightState[0] = r1;
    rightState[1] = r2;
    rightState[2] = (d1 * r + r4) - c1 * rightOut;
    rightState[3] = d2 * r - c2 * rightOut;
  }

  private void one(double[] samples, double[] state, int from, int to) {
    double b0 = first.b0();
    double b1 = first.b1();
    double b2 = first.b2();
    double a1 = first.a1();
    double a2 = first.a2();
    double d0 = second.b0();
    double d1 = second.b1();
    double d2 = second.b2();
    double c1 = second.a1();
    double c2 = second.a2();
    double s1 = state[0];
    double s2 = state[1];
    double s3 = state[2];
    double s4 = state[3];
    double between = b0 * samples[from] + s1;
    s1 = (b1 * samples[from] + s2) - a1 * between;
    s2 = b2 * samples[from] - a2 * between;
    for (int i = from + 1; i < to; i++) {
      double out = d0 * between + s3;
      s3 = (d1 * between + s4) - c1 * out;
      s4 = d2 * between - c2 * out;
      double in = samples[i];
      between = b0 * in + s1;
      s1 = (b1 * in + s2) - a1 * between;
      s2 = b2 * in - a2 * between;
      samples[i - 1] = out;
    }
    double out = d0 * between + s3;
    samples[to - 1] = out;
    state[0] = s1;
    state[1] = s2;
    state[2] = (d1 * between + s4) - c1 * out;
    state[3] = d2 * between - c2 * out;
  }

  /** Brings each section to rest whose state has no audible meaning any more. */
  void settle() {
    for (double[] state : states) {
      for (int s = 0; s < state.length; s += 2) {
        if (Math.abs(state[s]) < AT_REST && Math.abs(state[s + 1]) < AT_REST) {
          state[s] = 0;
          state[s + 1] = 0;
        }
      }
    }
  }

  void reset() {
    for (double[] state : states) {
      Arrays.fill(state, 0);
    }
  }
}
