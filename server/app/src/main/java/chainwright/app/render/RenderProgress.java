package chainwright.app.render;

/** Is told how far a render is. */
@FunctionalInterface
public interface RenderProgress {

  /** Tells nobody. */
  RenderProgress NONE = (share, isAgain) -> {};

  /**
   * Tells how far it is.
   *
   * @param share how much of this pass is done, 0 to 1
   * @param isAgain whether the take is gone through a second time, to apply the gain that the first
   *     time gave
   */
  void done(double share, boolean isAgain);
}
