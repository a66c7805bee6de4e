package chainwright.engine.stage;

/**
 * Designs {@code plosive-repair}: no change. At rest it passes the signal; it acts on single thumps
 * only.
 */
public final class PlosiveRepair implements StageModel {

  /** Makes the model, which has no state. */
  public PlosiveRepair() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
