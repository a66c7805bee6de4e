package chainwright.engine.stage;

/**
 * Designs {@code echo}: no change. At rest it passes the signal; what it adds is not a response.
 */
public final class Echo implements StageModel {

  /** Makes the model, which has no state. */
  public Echo() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
