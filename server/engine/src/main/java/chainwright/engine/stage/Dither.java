package chainwright.engine.stage;

/**
 * Designs {@code dither}: no change. At rest it passes the signal; what it adds is not a response
 * but noise.
 */
public final class Dither implements StageModel {

  /** Makes the model, which has no state. */
  public Dither() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
