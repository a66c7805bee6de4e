package chainwright.dsp.nonlinear;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * What saturates every channel on its own.
 *
 * @param model the saturation
 * @param sampleRateHz the rate it runs at, oversampling included [Hz], above 0
 */
public record SaturationDesign(SaturationModel model, double sampleRateHz)
    implements ProcessorDesign {

  /**
   * The tail of the slowest filter that any saturation has, which a bias may outlast, and which
   * removes an offset below 2 Hz [s]: it falls by 90 dB in ln(10^4.5) / (2 π 2 Hz), 0.83 s.
   */
  private static final double TAIL_SECONDS = 0.83;

  /**
   * Checks the rate.
   *
   * @param model the saturation
   * @param sampleRateHz the rate it runs at [Hz]
   * @throws IllegalArgumentException if the rate is not finite and above 0
   */
  public SaturationDesign {
    if (!(sampleRateHz > 0) || Double.isInfinite(sampleRateHz)) {
      throw new IllegalArgumentException(
          "the sample rate must be finite and above 0, but was " + sampleRateHz);
    }
  }

  @Override
  public int tailFrames() {
    return (int) Math.ceil(Math.max(TAIL_SECONDS, model.biasTailSeconds()) * sampleRateHz);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return model.newProcessor(sampleRateHz, wiring.channelCount());
  }
}
