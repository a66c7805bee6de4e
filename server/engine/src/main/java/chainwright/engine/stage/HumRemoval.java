package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.CorrectiveFilters;

/**
 * Designs {@code hum-removal}: six dips of -24 dB, 2 Hz wide, unless the settings say otherwise.
 * Harmonics from half the sample rate on are left out.
 *
 * <p>The bandwidth [Hz] is that of the poles; the points 3 dB down lie a little closer together, by
 * less than 1 % from -20 dB on.
 */
public final class HumRemoval implements LinearStage {

  /** Makes the model, which has no state. */
  public HumRemoval() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        CorrectiveFilters.humRemoval(
            context.frequency("mains"),
            (int) context.number("harmonics"),
            context.frequency("bandwidth"),
            context.decibels("depth"),
            context.rate().nyquist());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
