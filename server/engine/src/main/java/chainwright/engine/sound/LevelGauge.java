package chainwright.engine.sound;

import chainwright.dsp.loudness.ChannelPosition;
import chainwright.dsp.loudness.LoudnessMeter;
import chainwright.dsp.loudness.TruePeakMeter;
import chainwright.dsp.loudness.TruePeakReading;
import chainwright.quantity.SampleRate;

/**
 * Measures loudness and true peak of a sound that is handed in block by block, its channels in the
 * usual order. Source: ITU-R BS.1770-5, Annexes 1 and 2.
 */
public final class LevelGauge {

  private final LoudnessMeter loudness;
  private final TruePeakMeter truePeak;

  /**
   * Makes a gauge.
   *
   * @param rate the sample rate
   * @param channelCount the number of channels, ≥ 1
   * @throws IllegalArgumentException if there is no channel
   */
  public LevelGauge(SampleRate rate, int channelCount) {
    loudness = new LoudnessMeter(rate, ChannelPosition.usual(channelCount));
    truePeak = TruePeakMeter.ofAnnex2(channelCount);
  }

  /**
   * Measures a block, going on where the last one ended.
   *
   * @param channels the samples, [channel][frame], full scale 1.0, as many channels as it was made
   *     for
   * @param offset the first frame
   * @param count the number of frames; 0 changes nothing
   */
  public void process(double[][] channels, int offset, int count) {
    loudness.process(channels, offset, count);
    truePeak.process(channels, offset, count);
  }

  /**
   * Returns what was measured since the start.
   *
   * @return the level
   */
  public MeasuredLevel measure() {
    return new MeasuredLevel(
        loudness.measure().integratedLufs(),
        truePeak.measure().stream()
            .mapToDouble(TruePeakReading::annex2Dbtp)
            .max()
            .orElse(Double.NEGATIVE_INFINITY));
  }
}
