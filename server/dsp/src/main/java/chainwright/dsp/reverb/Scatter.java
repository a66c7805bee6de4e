package chainwright.dsp.reverb;

import java.util.SplittableRandom;

/** Numbers without a pattern that are the same every time, so that a room is always the same. */
final class Scatter {

  private final SplittableRandom random;

  /** Starts the numbers of one purpose. */
  Scatter(int purpose) {
    random = new SplittableRandom(purpose);
  }

  /** Returns the next number, 0 (closed) to 1 (open). */
  double next() {
    return random.nextDouble();
  }
}
