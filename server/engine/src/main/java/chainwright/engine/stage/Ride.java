package chainwright.engine.stage;

/**
 * Designs {@code ride}: nothing outside its passage, and the response of a chain is that outside
 * passages.
 */
public final class Ride implements StageModel {

  /** Makes the model, which has no state. */
  public Ride() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
