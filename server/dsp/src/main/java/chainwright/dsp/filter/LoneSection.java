package chainwright.dsp.filter;

import java.util.Arrays;

/** The last section of a cascade of an odd number, at work on the channels of one signal. */
final class LoneSection implements SectionGroup {

  /** The section as {@link SectionPair} runs it. */
  private final double b0;

  private final double b1;
  private final double b2;
  private final double a1;
  private final double a2;

  /** The two numbers of each channel. */
  private final double[][] states;

  LoneSection(BiquadCoefficients section, int channelCount) {
    b0 = section.b0();
    b1 = Math.fma(-section.a1(), b0, section.b1());
    b2 = Math.fma(-section.a2(), b0, section.b2());
    a1 = section.a1();
    a2 = section.a2();
    states = new double[channelCount][2];
  }

  @Override
  public void process(double[][] channels, int from, int to) {
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
    double l1 = leftState[0];
    double l2 = leftState[1];
    double r1 = rightState[0];
    double r2 = rightState[1];
    for (int i = from; i < to; i++) {
      double leftIn = left[i];
      left[i] = b0 * leftIn + l1;
      double next = (b1 * leftIn + l2) - a1 * l1;
      l2 = b2 * leftIn - a2 * l1;
      l1 = next;
      double rightIn = right[i];
      right[i] = b0 * rightIn + r1;
      next = (b1 * rightIn + r2) - a1 * r1;
      r2 = b2 * rightIn - a2 * r1;
      r1 = next;
    }
    leftState[0] = l1;
    leftState[1] = l2;
    rightState[0] = r1;
    rightState[1] = r2;
  }

  private void one(double[] samples, double[] state, int from, int to) {
    double s1 = state[0];
    double s2 = state[1];
    for (int i = from; i < to; i++) {
      double in = samples[i];
      samples[i] = b0 * in + s1;
      double next = (b1 * in + s2) - a1 * s1;
      s2 = b2 * in - a2 * s1;
      s1 = next;
    }
    state[0] = s1;
    state[1] = s2;
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
