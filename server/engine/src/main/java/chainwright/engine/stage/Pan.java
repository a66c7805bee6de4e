package chainwright.engine.stage;

/**
 * Designs {@code pan}: no change. The position and the law are gains of the two channels against
 * each other; the response is that of the sound before it is placed.
 */
public final class Pan implements StageModel {

  /** Makes the model, which has no state. */
  public Pan() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
