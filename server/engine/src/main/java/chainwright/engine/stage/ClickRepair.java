package chainwright.engine.stage;

/**
 * Designs {@code click-repair}: no change. At rest it passes the signal; it acts on single clicks
 * only.
 */
public final class ClickRepair implements StageModel {

  /** Makes the model, which has no state. */
  public ClickRepair() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
