package chainwright.app.audiofile;

/**
 * Makes integers of samples: multiplies by 2^(bits-1), rounds to the nearest, halves to even, and
 * holds what lies outside at the highest or lowest integer.
 */
final class IntegerRounding {

  private final double scale;
  private final double highest;
  private long held;
  private long notNumbers;

  IntegerRounding(int bits) {
    this.scale = 1L << (bits - 1);
    this.highest = scale - 1;
  }

  /** Returns the integer; a NaN becomes 0. */
  int round(double sample) {
    double rounded = Math.rint(sample * scale);
    if (rounded >= -scale && rounded <= highest) {
      return (int) rounded;
    }
    if (Double.isNaN(rounded)) {
      notNumbers++;
      return 0;
    }
    held++;
    return (int) (rounded > 0 ? highest : -scale);
  }

  /** How many samples were held at the highest or lowest integer. */
  long held() {
    return held;
  }

  /** How many samples were NaN. */
  long notNumbers() {
    return notNumbers;
  }
}
