package chainwright.notation.text;

/**
 * A stretch of a text, such as [3, 8): the five characters from offset 3.
 *
 * @param start the first offset [UTF-16 units], 0 or more
 * @param end the offset after the last, not below {@code start}
 */
public record TextSpan(int start, int end) {

  /**
   * Checks the order of the ends.
   *
   * @param start the first offset [UTF-16 units]
   * @param end the offset after the last
   * @throws IllegalArgumentException if {@code start} is negative or above {@code end}
   */
  public TextSpan {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException(
          "a span must have 0 <= start <= end, but was " + start + " to " + end);
    }
  }

  /**
   * Makes the span that begins at an offset and has a length.
   *
   * @param start the first offset
   * @param length how many characters, 0 or more
   * @return the span
   */
  public static TextSpan ofLength(int start, int length) {
    return new TextSpan(start, start + length);
  }

  /**
   * Returns how many characters the span holds.
   *
   * @return the length [UTF-16 units]
   */
  public int length() {
    return end - start;
  }

  /**
   * Returns the same stretch of a text that stands at another place.
   *
   * @param by how far it moves [UTF-16 units]; negative moves towards the start
   * @return the moved span
   */
  public TextSpan plus(int by) {
    return new TextSpan(start + by, end + by);
  }

  /**
   * Returns the smallest span that holds this one and another.
   *
   * @param other the other span
   * @return the joined span
   */
  public TextSpan union(TextSpan other) {
    return new TextSpan(Math.min(start, other.start), Math.max(end, other.end));
  }

  /**
   * Asks whether an offset lies inside or at either end, as a caret does.
   *
   * @param offset the offset
   * @return whether the caret touches the span
   */
  public boolean isTouchedBy(int offset) {
    return start <= offset && offset <= end;
  }

  /**
   * Asks whether two spans share a character or a border.
   *
   * @param other the other span
   * @return whether they touch
   */
  public boolean isTouching(TextSpan other) {
    return start <= other.end && other.start <= end;
  }

  /**
   * Asks whether another span lies wholly inside this one.
   *
   * @param other the other span
   * @return whether it is contained
   */
  public boolean contains(TextSpan other) {
    return start <= other.start && other.end <= end;
  }
}
