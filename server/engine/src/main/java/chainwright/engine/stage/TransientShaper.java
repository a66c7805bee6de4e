package chainwright.engine.stage;

/**
 * Designs {@code transient-shaper}: no change. A steady sound passes at every level; what it does
 * to beginnings and tails is neither a response nor a static curve.
 */
public final class TransientShaper implements StageModel {

  /** Makes the model, which has no state. */
  public TransientShaper() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
