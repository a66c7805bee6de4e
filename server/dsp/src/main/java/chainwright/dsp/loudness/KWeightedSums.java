package chainwright.dsp.loudness;

import chainwright.quantity.SampleRate;
import java.util.Arrays;

/**
 * K-weights channels and sums their squares.
 *
 * <p>Both sections run in one pass, and two channels at once: each recursion waits on its own last
 * value, and four of them keep the processor busy meanwhile. Each section subtracts its older
 * output first, so that only one product and one difference lie between one output and the next.
 */
final class KWeightedSums {

  /** State below this is set to 0, before it decays into subnormal numbers, which are slow. */
  private static final double AT_REST = 1e-150;

  private static final int STATE = 6;

  private final double b0;
  private final double b1;
  private final double b2;
  private final double a1;
  private final double a2;
  private final double c1;
  private final double c2;

  /** Of each channel: two inputs, two outputs of the shelf, two outputs of the high-pass. */
  private final double[][] state;

  private final double[] sums;

  KWeightedSums(SampleRate rate, int channelCount) {
    KWeighting weighting = KWeighting.design(rate);
    b0 = weighting.shelf().b0();
    b1 = weighting.shelf().b1();
    b2 = weighting.shelf().b2();
    a1 = weighting.shelf().a1();
    a2 = weighting.shelf().a2();
    c1 = weighting.highPass().a1();
    c2 = weighting.highPass().a2();
    state = new double[channelCount][STATE];
    sums = new double[channelCount];
  }

  /** Adds the squares of the samples to the channels' sums. */
  void add(double[][] channels, int from, int to) {
    int c = 0;
    for (; c + 1 < state.length; c += 2) {
      addPair(channels, c, from, to);
    }
    if (c < state.length) {
      addSingle(channels[c], c, from, to);
    }
  }

  /** Returns a channel's sum of squares and begins anew with 0. */
  double takeSum(int channel) {
    double sum = sums[channel];
    sums[channel] = 0;
    double[] s = state[channel];
    boolean isAtRest = true;
    for (double value : s) {
      isAtRest &= Math.abs(value) < AT_REST;
    }
    if (isAtRest) {
      Arrays.fill(s, 0);
    }
    return sum;
  }

  void reset() {
    for (double[] s : state) {
      Arrays.fill(s, 0);
    }
    Arrays.fill(sums, 0);
  }

  private void addPair(double[][] channels, int c, int from, int to) {
    double[] left = channels[c];
    double[] right = channels[c + 1];
    double[] l = state[c];
    double[] r = state[c + 1];
    double lx1 = l[0];
    double lx2 = l[1];
    double ly1 = l[2];
    double ly2 = l[3];
    double lw1 = l[4];
    double lw2 = l[5];
    double rx1 = r[0];
    double rx2 = r[1];
    double ry1 = r[2];
    double ry2 = r[3];
    double rw1 = r[4];
    double rw2 = r[5];
    double leftSum = sums[c];
    double rightSum = sums[c + 1];
    for (int i = from; i < to; i++) {
      double lx = left[i];
      double ly = (b0 * lx + b1 * lx1 + b2 * lx2 - a2 * ly2) - a1 * ly1;
      double lw = ((ly - ly1) - (ly1 - ly2) - c2 * lw2) - c1 * lw1;
      leftSum += lw * lw;
      lx2 = lx1;
      lx1 = lx;
      ly2 = ly1;
      ly1 = ly;
      lw2 = lw1;
      lw1 = lw;
      double rx = right[i];
      double ry = (b0 * rx + b1 * rx1 + b2 * rx2 - a2 * ry2) - a1 * ry1;
      double rw = ((ry - ry1) - (ry1 - ry2) - c2 * rw2) - c1 * rw1;
      rightSum += rw * rw;
      rx2 = rx1;
      rx1 = rx;
      ry2 = ry1;
      ry1 = ry;
      rw2 = rw1;
      rw1 = rw;
    }
    sums[c] = leftSum;
    sums[c + 1] = rightSum;
    store(l, lx1, lx2, ly1, ly2, lw1, lw2);
    store(r, rx1, rx2, ry1, ry2, rw1, rw2);
  }

  private void addSingle(double[] samples, int c, int from, int to) {
    double[] s = state[c];
    double x1 = s[0];
    double x2 = s[1];
    double y1 = s[2];
    double y2 = s[3];
    double w1 = s[4];
    double w2 = s[5];
    double sum = sums[c];
    for (int i = from; i < to; i++) {
      double x = samples[i];
      double y = (b0 * x + b1 * x1 + b2 * x2 - a2 * y2) - a1 * y1;
      double w = ((y - y1) - (y1 - y2) - c2 * w2) - c1 * w1;
      sum += w * w;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      w2 = w1;
      w1 = w;
    }
    sums[c] = sum;
    store(s, x1, x2, y1, y2, w1, w2);
  }

  private static void store(
      double[] s, double x1, double x2, double y1, double y2, double w1, double w2) {
    s[0] = x1;
    s[1] = x2;
    s[2] = y1;
    s[3] = y2;
    s[4] = w1;
    s[5] = w2;
  }
}
