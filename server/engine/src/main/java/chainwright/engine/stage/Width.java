package chainwright.engine.stage;

/**
 * Designs {@code width}: no change. The response is that of the middle, what both channels share,
 * which passes as it is; the side gain and the low end made mono concern what differs.
 */
public final class Width implements StageModel {

  /** Makes the model, which has no state. */
  public Width() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
