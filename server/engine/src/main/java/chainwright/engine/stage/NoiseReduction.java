package chainwright.engine.stage;

/**
 * Designs {@code noise-reduction}: no change. At rest it passes the signal; what it takes away
 * depends on the noise in the recording.
 */
public final class NoiseReduction implements StageModel {

  /** Makes the model, which has no state. */
  public NoiseReduction() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
