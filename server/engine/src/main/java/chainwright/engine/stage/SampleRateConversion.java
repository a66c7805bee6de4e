package chainwright.engine.stage;

import chainwright.dsp.filter.RateFilterResponse;
import chainwright.dsp.signal.RateFilter;
import chainwright.quantity.SampleRate;

/**
 * Designs {@code sample-rate-conversion}: flat to 90 % of half the lower rate, 150 dB down from
 * half of it on, unless written.
 *
 * <p>It has no processor of its own, since what comes out has other frames than what goes in:
 * {@code SoundBuilder} divides the path there.
 */
public final class SampleRateConversion implements StageModel {

  /** The word of the stage. */
  public static final String WORD = "sample-rate-conversion";

  /** Makes the model, which has no state. */
  public SampleRateConversion() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofResponse(new RateFilterResponse(filter(context)));
  }

  /**
   * Returns the low-pass of a conversion, which knows both rates.
   *
   * @param context the settings of the stage, and the rate of what comes to it
   * @return the filter
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public static RateFilter filter(StageContext context) {
    return new RateFilter(
        context.rate(),
        SampleRate.ofHertz(context.number("rate")),
        context.number("pass-band") / 100 / 2,
        context.number("stop-band"));
  }
}
