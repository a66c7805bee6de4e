package chainwright.engine.stage;

/**
 * Designs {@code sample-rate-conversion}: no change. What lies in its pass band it passes; the fall
 * of the top at half the lower rate is not designed here.
 */
public final class SampleRateConversion implements StageModel {

  /** Makes the model, which has no state. */
  public SampleRateConversion() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }
}
