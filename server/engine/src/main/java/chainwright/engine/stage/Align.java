package chainwright.engine.stage;

/**
 * Designs {@code align}: later (+) or earlier (-) by its time [s]. Earlier needs look-ahead, which
 * is a latency of the same length; so is what the interpolation between frames looks ahead.
 */
public final class Align implements SampledDelayStage {

  /** Makes the model, which has no state. */
  public Align() {}
}
