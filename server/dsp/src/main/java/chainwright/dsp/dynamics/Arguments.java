package chainwright.dsp.dynamics;

/** The checks of numbers that come from a caller. */
final class Arguments {

  private Arguments() {}

  /** Throws unless the value is a number that is not infinite. */
  static void requireFinite(String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be finite, but was " + value);
    }
  }

  /** Throws unless the value is finite and not below 0. */
  static void requireFiniteNotNegative(String name, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          name + " must be finite and not below 0, but was " + value);
    }
  }

  /** Throws unless the value is finite and above 0. */
  static void requireFinitePositive(String name, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " must be finite and above 0, but was " + value);
    }
  }

  /** Throws unless the ratio is at least 1; infinity passes. */
  static void requireRatio(double ratio) {
    if (!(ratio >= 1)) {
      throw new IllegalArgumentException("the ratio must be at least 1, but was " + ratio);
    }
  }

  /** Throws unless the range of samples lies within an array of this size. */
  static void requireRange(int offset, int length, int size) {
    if (offset < 0 || length < 0 || offset > size - length) {
      throw new IllegalArgumentException(
          "the block must lie within the array of "
              + size
              + " samples, but was "
              + length
              + " samples from "
              + offset);
    }
  }
}
