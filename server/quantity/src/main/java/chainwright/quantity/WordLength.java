package chainwright.quantity;

/**
 * The length of a digital word, such as 24 bit.
 *
 * @param bits the length [bit], finite and above 0
 */
public record WordLength(double bits) implements Quantity {

  /**
   * Checks the value.
   *
   * @param bits the length [bit]
   * @throws IllegalArgumentException if the value is not finite or not above 0
   */
  public WordLength {
    Quantity.requireFinite("the word length", bits);
    if (bits <= 0) {
      throw new IllegalArgumentException("the word length must be above 0, but was " + bits);
    }
  }

  @Override
  public double baseValue() {
    return bits;
  }

  @Override
  public Dimension dimension() {
    return Dimension.WORD_LENGTH;
  }

  @Override
  public String toString() {
    return NumberText.format(bits) + " bit";
  }
}
