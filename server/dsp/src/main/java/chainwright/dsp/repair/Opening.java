package chainwright.dsp.repair;

import chainwright.dsp.dynamics.SlidingMaximum;

/**
 * The morphological opening of a row: what rises for less than a window is cut down to what is
 * around it, all else stays as it is, later by a window less one. The opening of the negated row,
 * negated, is the closing, which fills what falls for less than a window.
 *
 * <p>Source: J. Serra, Image Analysis and Mathematical Morphology, 1982; from memory.
 */
final class Opening {

  private final SlidingMaximum ofNegated;
  private final SlidingMaximum ofSmallest;

  /**
   * Starts without values.
   *
   * @param window over how many values, ≥ 1
   */
  Opening(int window) {
    ofNegated = new SlidingMaximum(window);
    ofSmallest = new SlidingMaximum(window);
  }

  double next(double value) {
    return ofSmallest.next(-ofNegated.next(-value));
  }

  void reset() {
    ofNegated.reset();
    ofSmallest.reset();
  }
}
