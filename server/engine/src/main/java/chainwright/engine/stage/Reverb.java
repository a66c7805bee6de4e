package chainwright.engine.stage;

/**
 * Designs {@code reverb}: no change. At rest it passes the signal; what it adds is not a response.
 */
public final class Reverb implements StageModel {

  /** Makes the model, which has no state. */
  public Reverb() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
