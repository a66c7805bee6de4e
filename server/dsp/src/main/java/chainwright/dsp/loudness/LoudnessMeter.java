package chainwright.dsp.loudness;

import chainwright.quantity.SampleRate;
import java.util.Arrays;
import java.util.List;

/**
 * Measures loudness: integrated, momentary, short-term and its range.
 *
 * <p>Source: ITU-R BS.1770-5, Annex 1 (weighting, blocks of 400 ms every 100 ms, gates at −70 LUFS
 * and 10 LU below the mean); EBU Tech 3341 (momentary over 400 ms, short-term over 3 s, here every
 * 10 ms); EBU Tech 3342 (range: 10th to 95th percentile of short-term loudness, here every 100 ms,
 * gates at −70 LUFS and 20 LU below the mean). Windows that would reach beyond the end are left
 * out.
 *
 * <p>The windows are summed up from parts of 10 ms; where that is no whole number of samples, each
 * part ends at the sample nearest to its time. The blocks of the gates are kept in a histogram with
 * steps of 0.001 LU, which is exact but for blocks within one step of a gate, and takes 3.2 MB.
 */
public final class LoudnessMeter {

  private static final double OFFSET_DB = -0.691;
  private static final double ABSOLUTE_GATE_LUFS = -70;
  private static final double INTEGRATED_GATE_LU = -10;
  private static final double RANGE_GATE_LU = -20;
  private static final double RANGE_LOW_SHARE = 0.10;
  private static final double RANGE_HIGH_SHARE = 0.95;

  /** Up to 30 LUFS. */
  private static final int HISTOGRAM_DECIBELS = 100;

  private static final int STEPS_PER_DECIBEL = 1000;

  private static final int PARTS_PER_SECOND = 100;

  /** Parts of 10 ms in the step of the gates' blocks. */
  private static final int STEP = 10;

  private static final int MOMENTARY = 40;
  private static final int SHORT_TERM = 300;

  private final SampleRate rate;
  private final double[] weights;
  private final SampleGuard guard;
  private final FrameSink sink = this::take;
  private final KWeightedSums weighted;
  private final PowerHistogram blocks = gatedHistogram();
  private final PowerHistogram shortTerms = gatedHistogram();

  /** Sums of squares of the last parts, a ring. */
  private final double[] parts = new double[STEP];

  /** Sums of squares of the 100 ms that end with each of the last parts, a ring. */
  private final double[] steps = new double[SHORT_TERM];

  private long partCount;
  private long frame;
  private long partEnd;
  private double momentary = Double.NaN;
  private double shortTerm = Double.NaN;
  private double momentaryMax = Double.NaN;
  private double shortTermMax = Double.NaN;

  /**
   * Makes a meter.
   *
   * @param rate the sample rate
   * @param positions where the channels' loudspeakers stand, in the channels' order
   * @throws IllegalArgumentException if there is no channel
   */
  public LoudnessMeter(SampleRate rate, List<ChannelPosition> positions) {
    this.rate = rate;
    weights = positions.stream().mapToDouble(ChannelPosition::weight).toArray();
    guard = new SampleGuard(weights.length);
    weighted = new KWeightedSums(rate, weights.length);
    partEnd = endOfPart(1);
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

  /**
   * Returns what was measured since the start.
   *
   * @return the readings; measuring may go on
   */
  public LoudnessReading measure() {
    double gate = blocks.meanAbove(0) * toFactor(INTEGRATED_GATE_LU);
    boolean isTooQuiet = Double.isNaN(gate) && partCount >= MOMENTARY;
    return new LoudnessReading(
        isTooQuiet ? Double.NEGATIVE_INFINITY : toLufs(blocks.meanAbove(gate)),
        isTooQuiet ? Double.NEGATIVE_INFINITY : toLufs(gate),
        toLufs(momentaryMax),
        toLufs(shortTermMax),
        rangeLu());
  }

  private double rangeLu() {
    double gate = shortTerms.meanAbove(0) * toFactor(RANGE_GATE_LU);
    return toLufs(shortTerms.percentileAbove(gate, RANGE_HIGH_SHARE))
        - toLufs(shortTerms.percentileAbove(gate, RANGE_LOW_SHARE));
  }

  /**
   * Returns the loudness of the last 400 ms.
   *
   * @return the momentary loudness [LUFS] at the last whole 10 ms; NaN before 400 ms
   */
  public double momentaryLufs() {
    return toLufs(momentary);
  }

  /**
   * Returns the loudness of the last 3 s.
   *
   * @return the short-term loudness [LUFS] at the last whole 10 ms; NaN before 3 s
   */
  public double shortTermLufs() {
    return toLufs(shortTerm);
  }

  /** Begins anew, as if new. */
  public void reset() {
    guard.reset();
    weighted.reset();
    blocks.reset();
    shortTerms.reset();
    Arrays.fill(parts, 0);
    Arrays.fill(steps, 0);
    partCount = 0;
    frame = 0;
    partEnd = endOfPart(1);
    momentary = Double.NaN;
    shortTerm = Double.NaN;
    momentaryMax = Double.NaN;
    shortTermMax = Double.NaN;
  }

  /** Measures samples that were checked. */
  void take(double[][] channels, int length) {
    int done = 0;
    while (done < length) {
      int count = (int) Math.min(length - done, partEnd - frame);
      weighted.add(channels, done, done + count);
      done += count;
      frame += count;
      if (frame == partEnd) {
        endPart();
      }
    }
  }

  private void endPart() {
    double sum = 0;
    for (int c = 0; c < weights.length; c++) {
      sum += weights[c] * weighted.takeSum(c);
    }
    parts[(int) (partCount % STEP)] = sum;
    partCount++;
    partEnd = endOfPart(partCount + 1);
    double step = 0;
    for (double part : parts) {
      step += part;
    }
    steps[(int) (partCount % SHORT_TERM)] = step;
    boolean isWholeStep = partCount % STEP == 0;
    if (partCount >= MOMENTARY) {
      momentary = meanOfLast(MOMENTARY);
      momentaryMax = momentary <= momentaryMax ? momentaryMax : momentary;
      if (isWholeStep) {
        blocks.add(momentary);
      }
    }
    if (partCount >= SHORT_TERM) {
      shortTerm = meanOfLast(SHORT_TERM);
      shortTermMax = shortTerm <= shortTermMax ? shortTermMax : shortTerm;
      if (isWholeStep) {
        shortTerms.add(shortTerm);
      }
    }
  }

  /** Returns the weighted mean square of the last parts, summed anew so that no error adds up. */
  private double meanOfLast(int window) {
    double sum = 0;
    for (long part = partCount - window + STEP; part <= partCount; part += STEP) {
      sum += steps[(int) (part % SHORT_TERM)];
    }
    return sum / (frame - endOfPart(partCount - window));
  }

  private long endOfPart(long part) {
    return Math.round(part * rate.hertz() / PARTS_PER_SECOND);
  }

  private static PowerHistogram gatedHistogram() {
    return new PowerHistogram(toPower(ABSOLUTE_GATE_LUFS), HISTOGRAM_DECIBELS, STEPS_PER_DECIBEL);
  }

  private static double toLufs(double power) {
    return OFFSET_DB + 10 * Math.log10(power);
  }

  private static double toPower(double lufs) {
    return toFactor(lufs - OFFSET_DB);
  }

  private static double toFactor(double decibels) {
    return Math.pow(10, decibels / 10);
  }
}
