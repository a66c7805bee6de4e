package chainwright.dsp.loudness;

import chainwright.quantity.SampleRate;
import java.util.List;

/** All meters at once, over one pass. */
public final class SignalMeter {

  private final SampleGuard guard;
  private final FrameSink sink = this::take;
  private final LoudnessMeter loudness;
  private final TruePeakMeter truePeak;
  private final LevelMeter level;

  /**
   * Makes a meter.
   *
   * @param rate the sample rate
   * @param positions where the channels' loudspeakers stand, in the channels' order
   * @param fullScaleAmplitude the magnitude from which a sample counts as at full scale; see {@link
   *     LevelMeter#fullScale}
   * @throws IllegalArgumentException if there is no channel, or full scale is not above 0
   */
  public SignalMeter(SampleRate rate, List<ChannelPosition> positions, double fullScaleAmplitude) {
    guard = new SampleGuard(positions.size());
    loudness = new LoudnessMeter(rate, positions);
    truePeak = TruePeakMeter.ofBoth(positions.size());
    level = new LevelMeter(rate, positions.size(), fullScaleAmplitude);
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

  private void take(double[][] channels, int length) {
    loudness.take(channels, length);
    truePeak.take(channels, length);
    level.take(channels, length);
  }

  /**
   * Returns what was measured since the start.
   *
   * @return the readings; measuring may go on
   */
  public SignalReading measure() {
    return new SignalReading(
        guard.frameCount(),
        guard.rejectedCount(),
        loudness.measure(),
        truePeak.measure(),
        level.measure(),
        level.correlation());
  }

  /** Begins anew, as if new. */
  public void reset() {
    guard.reset();
    loudness.reset();
    truePeak.reset();
    level.reset();
  }
}
