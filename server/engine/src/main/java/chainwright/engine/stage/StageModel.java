package chainwright.engine.stage;

/**
 * Designs the stages of one kind. An implementation has no state and a constructor without
 * parameters.
 */
public interface StageModel {

  /**
   * Designs a stage.
   *
   * @param context its settings and where it stands
   * @return what it does to a signal
   * @throws IllegalArgumentException if its settings allow no design, such as a cutoff above half
   *     the sample rate
   */
  StageSound design(StageContext context);
}
