package chainwright.engine.stage;

/**
 * Designs {@code ducker}: 2 dB, 10 ms and 150 ms unless the settings say otherwise.
 *
 * <p>The levels of its curve are those of the key, which its detector follows by its peaks. The
 * hold is not part of the design.
 */
public final class Ducker implements StageModel {

  /** Makes the model, which has no state. */
  public Ducker() {}

  @Override
  public StageSound design(StageContext context) {
    return CappedReduction.design(context, "reduction");
  }
}
