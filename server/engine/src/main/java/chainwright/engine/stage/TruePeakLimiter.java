package chainwright.engine.stage;

/**
 * Designs {@code true-peak-limiter}: no true peak above the ceiling [dBTP]; 3 ms of look-ahead and
 * 120 ms of release unless written. Its levels are those of true peaks.
 */
public final class TruePeakLimiter implements StageModel {

  /** Makes the model, which has no state. */
  public TruePeakLimiter() {}

  @Override
  public StageSound design(StageContext context) {
    return PeakLimit.design(context);
  }
}
