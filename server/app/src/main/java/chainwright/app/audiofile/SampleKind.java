package chainwright.app.audiofile;

/**
 * How a file stores a sample.
 *
 * @param coding as an integer or in floating point
 * @param bits how many bits of it count: 1 to 32 as an integer, 32 or 64 in floating point
 */
public record SampleKind(Coding coding, int bits) {

  /** How the bits are to be read. */
  public enum Coding {
    /** Two's complement or offset binary, full scale 2<sup>bits-1</sup>. */
    INTEGER,
    /** IEEE 754, full scale 1.0. */
    FLOAT
  }

  /**
   * Checks the values.
   *
   * @param coding as an integer or in floating point
   * @param bits how many bits of it count
   * @throws IllegalArgumentException if there is no such kind
   */
  public SampleKind {
    boolean exists =
        switch (coding) {
          case INTEGER -> bits >= 1 && bits <= 32;
          case FLOAT -> bits == 32 || bits == 64;
        };
    if (!exists) {
      throw new IllegalArgumentException(
          "a sample must be an integer of 1 to 32 bits or a float of 32 or 64 bits, but was "
              + coding
              + " of "
              + bits
              + " bits");
    }
  }

  /**
   * Returns integers.
   *
   * @param bits how many bits, 1 to 32
   * @return the kind
   */
  public static SampleKind ofInteger(int bits) {
    return new SampleKind(Coding.INTEGER, bits);
  }

  /**
   * Returns floating-point numbers.
   *
   * @param bits how many bits, 32 or 64
   * @return the kind
   */
  public static SampleKind ofFloat(int bits) {
    return new SampleKind(Coding.FLOAT, bits);
  }

  /**
   * Asks whether samples are integers.
   *
   * @return whether values between two steps are rounded and values above full scale held
   */
  public boolean isInteger() {
    return coding == Coding.INTEGER;
  }

  /** The kind in words, such as {@code 24 bit} or {@code 32 bit float}. */
  @Override
  public String toString() {
    return bits + (isInteger() ? " bit" : " bit float");
  }
}
