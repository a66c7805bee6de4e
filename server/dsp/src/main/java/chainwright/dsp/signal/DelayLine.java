package chainwright.dsp.signal;

import java.util.Arrays;

/** Samples that wait for a whole number of frames. */
public final class DelayLine implements Processor {

  private final double[][] rings;
  private final int frames;
  private int position;

  /**
   * Makes a line that holds silence.
   *
   * @param channelCount the number of channels, ≥ 1
   * @param frames the delay [frames], ≥ 0
   * @throws IllegalArgumentException if a number is outside its range
   */
  public DelayLine(int channelCount, int frames) {
    if (channelCount < 1 || frames < 0) {
      throw new IllegalArgumentException(
          "a delay line must have at least 1 channel and 0 frames, but had "
              + channelCount
              + " and "
              + frames);
    }
    rings = new double[channelCount][frames];
    this.frames = frames;
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    if (frames == 0) {
      return;
    }
    int next = position;
    for (int c = 0; c < rings.length; c++) {
      double[] ring = rings[c];
      double[] channel = channels[c];
      next = position;
      for (int i = from; i < to; i++) {
        double waited = ring[next];
        ring[next] = channel[i];
        channel[i] = waited;
        next = next + 1 == frames ? 0 : next + 1;
      }
    }
    position = next;
  }

  @Override
  public void reset() {
    for (double[] ring : rings) {
      Arrays.fill(ring, 0);
    }
    position = 0;
  }
}
