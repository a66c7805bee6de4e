package chainwright.dsp.filter;

import java.util.Arrays;

/**
 * Two second-order sections of a cascade, one after the other, at work on the channels of one
 * signal.
 */
final class SectionPair implements SectionGroup {

  /*
   * Transposed direct form II, y = b0 x + s1, with the output taken out of the recursion: s1' = (b1 −
   * a1 b0) x + s2 − a1 s1 and s2' = (b2 − a2 b0) x − a2 s1. So each state waits for the one before by
   * a multiplication and a subtraction only, and not for the output, too. That still leaves most of a
   * processor idle. Here the second section works on the sample before that of the first, and two
   * channels run side by side: four chains that do not wait for one another. Each block begins and
   * ends with one section alone, so that nothing waits between blocks.
   *
   * There is no Math.fma for samples: four chains keep the multipliers busy without it, and where a
   * processor has none Java would compute it a thousand times slower.
   */

  private final BiquadCoefficients first;
  private final BiquadCoefficients second;

  /** b1 − a1 b0 and b2 − a2 b0 of the first section, then of the second; rounded once. */
  private final double[] driven;

  /** The state of each channel: two numbers of the first section, two of the second. */
  private final double[][] states;

  SectionPair(BiquadCoefficients first, BiquadCoefficients second, int channelCount) {
    this.first = first;
    this.second = second;
    driven =
        new double[] {
          Math.fma(-first.a1(), first.b0(), first.b1()),
          Math.fma(-first.a2(), first.b0(), first.b2()),
          Math.fma(-second.a1(), second.b0(), second.b1()),
          Math.fma(-second.a2(), second.b0(), second.b2())
        };
    states = new double[channelCount][4];
  }

  @Override
  public void process(double[][] channels, int from, int to) {
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
    double b1 = driven[0];
    double b2 = driven[1];
    double a1 = first.a1();
    double a2 = first.a2();
    double d0 = second.b0();
    double d1 = driven[2];
    double d2 = driven[3];
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
    double leftIn = left[from];
    double l = b0 * leftIn + l1;
    double next = (b1 * leftIn + l2) - a1 * l1;
    l2 = b2 * leftIn - a2 * l1;
    l1 = next;
    double rightIn = right[from];
    double r = b0 * rightIn + r1;
    next = (b1 * rightIn + r2) - a1 * r1;
    r2 = b2 * rightIn - a2 * r1;
    r1 = next;
    for (int i = from + 1; i < to; i++) {
      left[i - 1] = d0 * l + l3;
      next = (d1 * l + l4) - c1 * l3;
      l4 = d2 * l - c2 * l3;
      l3 = next;
      right[i - 1] = d0 * r + r3;
      next = (d1 * r + r4) - c1 * r3;
      r4 = d2 * r - c2 * r3;
      r3 = next;
      leftIn = left[i];
      l = b0 * leftIn + l1;
      next = (b1 * leftIn + l2) - a1 * l1;
      l2 = b2 * leftIn - a2 * l1;
      l1 = next;
      rightIn = right[i];
      r = b0 * rightIn + r1;
      next = (b1 * rightIn + r2) - a1 * r1;
      r2 = b2 * rightIn - a2 * r1;
      r1 = next;
    }
    left[to - 1] = d0 * l + l3;
    right[to - 1] = d0 * r + r3;
    leftState[0] = l1;
    leftState[1] = l2;
    leftState[2] = (d1 * l + l4) - c1 * l3;
    leftState[3] = d2 * l - c2 * l3;
    rightState[0] = r1;
    rightState[1] = r2;
    rightState[2] = (d1 * r + r4) - c1 * r3;
    rightState[3] = d2 * r - c2 * r3;
  }

  private void one(double[] samples, double[] state, int from, int to) {
    double b0 = first.b0();
    double b1 = driven[0];
    double b2 = driven[1];
    double a1 = first.a1();
    double a2 = first.a2();
    double d0 = second.b0();
    double d1 = driven[2];
    double d2 = driven[3];
    double c1 = second.a1();
    double c2 = second.a2();
    double s1 = state[0];
    double s2 = state[1];
    double s3 = state[2];
    double s4 = state[3];
    double in = samples[from];
    double between = b0 * in + s1;
    double next = (b1 * in + s2) - a1 * s1;
    s2 = b2 * in - a2 * s1;
    s1 = next;
    for (int i = from + 1; i < to; i++) {
      samples[i - 1] = d0 * between + s3;
      next = (d1 * between + s4) - c1 * s3;
      s4 = d2 * between - c2 * s3;
      s3 = next;
      in = samples[i];
      between = b0 * in + s1;
      next = (b1 * in + s2) - a1 * s1;
      s2 = b2 * in - a2 * s1;
      s1 = next;
    }
    samples[to - 1] = d0 * between + s3;
    state[0] = s1;
    state[1] = s2;
    state[2] = (d1 * between + s4) - c1 * s3;
    state[3] = d2 * between - c2 * s3;
  }

  @Override
  public void settle() {
    SectionGroup.settle(states);
  }

  @Override
  public void reset() {
    for (double[] state : states) {
      Arrays.fill(state, 0);
    }
  }
}
