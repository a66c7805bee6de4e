package chainwright.engine.stage;

import chainwright.dsp.reverb.EchoDesign;

/**
 * The repeats of a sound.
 *
 * @param echo the repeats, which sound
 * @param blendShare the factor of them, 0 to 1
 */
public record RepeatsDecay(EchoDesign echo, double blendShare) implements DecayModel {

  @Override
  public double secondsAt(double hertz) {
    return echo.secondsAt(hertz);
  }
}
