package chainwright.dsp.loudness;

import chainwright.quantity.SampleRate;
import java.util.List;
import java.util.stream.IntStream;

/** Measures levels: sample peak, RMS, crest factor, offset, noise floor, clipping, correlation. */
public final class LevelMeter {

  /** Full scale of recordings in floating point. */
  public static final double FLOATING_POINT_FULL_SCALE = 1;

  private static final int STRETCHES_PER_SECOND = 20;

  private final SampleRate rate;
  private final SampleGuard guard;
  private final FrameSink sink = this::take;
  private final List<LevelLane> lanes;
  private final RunningSum products = new RunningSum();
  private double partProducts;
  private long frame;
  private long stretchStart;
  private long stretchEnd;
  private long stretchCount;

  /**
   * Makes a meter.
   *
   * @param rate the sample rate
   * @param channelCount the number of channels, at least 1
   * @param fullScaleAmplitude the magnitude from which a sample counts as at full scale; see {@link
   *     #fullScale}
   * @throws IllegalArgumentException if there is no channel, or full scale is not above 0
   */
  public LevelMeter(SampleRate rate, int channelCount, double fullScaleAmplitude) {
    if (!(fullScaleAmplitude > 0)) {
      throw new IllegalArgumentException(
          "full scale must lie above 0, but was " + fullScaleAmplitude);
    }
    this.rate = rate;
    guard = new SampleGuard(channelCount);
    lanes =
        IntStream.range(0, channelCount).mapToObj(c -> new LevelLane(fullScaleAmplitude)).toList();
    stretchEnd = endOfStretch(1);
  }

  /**
   * Returns the largest positive number of a word length, at which recordings are cut.
   *
   * @param bits the word length of whole numbers [bits], at least 2
   * @return the number, full scale 1.0: 32767/32768 for 16 bits
   */
  public static double fullScale(int bits) {
    return 1 - Math.scalb(1.0, 1 - bits);
  }

  /**
   * Measures a block, going on where the last one ended.
   *
   * @param channels the samples, [channel][sample], full scale 1.0
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IllegalArgumentException if there are not as many channels as the meter has, or the
   *     block does not lie within each
   */
  public void process(double[][] channels, int offset, int length) {
    guard.pass(channels, offset, length, sink);
  }

  /** Measures samples that were checked. */
  void take(double[][] channels, int length) {
    int done = 0;
    while (done < length) {
      int count = (int) Math.min(length - done, stretchEnd - frame);
      for (int c = 0; c < lanes.size(); c++) {
        lanes.get(c).take(channels[c], done, done + count);
      }
      if (lanes.size() > 1) {
        multiply(channels[0], channels[1], done, done + count);
      }
      done += count;
      frame += count;
      if (frame == stretchEnd) {
        endStretch();
      }
    }
  }

  private void multiply(double[] left, double[] right, int from, int to) {
    double sum = partProducts;
    for (int i = from; i < to; i++) {
      sum += left[i] * right[i];
    }
    partProducts = sum;
  }

  private void endStretch() {
    for (int c = 0; c < lanes.size(); c++) {
      lanes.get(c).endStretch(stretchEnd - stretchStart);
    }
    products.add(partProducts);
    partProducts = 0;
    stretchCount++;
    stretchStart = stretchEnd;
    stretchEnd = endOfStretch(stretchCount + 1);
  }

  private long endOfStretch(long stretch) {
    return Math.round(stretch * rate.hertz() / STRETCHES_PER_SECOND);
  }

  /**
   * Returns what was measured since the start.
   *
   * @return the levels of each channel; measuring may go on
   */
  public List<ChannelLevels> measure() {
    return lanes.stream().map(lane -> lane.levels(frame)).toList();
  }

  /**
   * Returns how alike the first two channels are.
   *
   * @return the correlation: 1 for the same signal at any levels, 0 for unrelated ones, −1 where
   *     one is the other inverted; NaN if there is one channel, or one of them is silent
   */
  public double correlation() {
    if (lanes.size() < 2) {
      return Double.NaN;
    }
    double both = Math.sqrt(lanes.get(0).squares()) * Math.sqrt(lanes.get(1).squares());
    return both == 0 ? Double.NaN : Math.max(-1, Math.min(1, products.plus(partProducts) / both));
  }

  /** Begins anew, as if new. */
  public void reset() {
    guard.reset();
    lanes.forEach(LevelLane::reset);
    products.reset();
    partProducts = 0;
    frame = 0;
    stretchStart = 0;
    stretchCount = 0;
    stretchEnd = endOfStretch(1);
  }
}
