package chainwright.engine.stage;

/**
 * Designs {@code limiter}: no sample above the ceiling [dBFS]; 3 ms of look-ahead and 120 ms of
 * release unless written.
 */
public final class Limiter implements StageModel {

  /** Makes the model, which has no state. */
  public Limiter() {}

  @Override
  public StageSound design(StageContext context) {
    return PeakLimit.design(context);
  }
}
