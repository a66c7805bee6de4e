package chainwright.engine.stage;

/**
 * Designs {@code delay}: later by its time [s]. The time is wanted, so it is part of the response
 * and not a latency that others have to make up for. Only a delay shorter than its interpolation
 * between frames has a latency besides.
 */
public final class Delay implements SampledDelayStage {

  /** Makes the model, which has no state. */
  public Delay() {}
}
