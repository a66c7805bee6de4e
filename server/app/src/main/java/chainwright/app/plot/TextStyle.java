package chainwright.app.plot;

/**
 * How large a text plot is and which characters it may use.
 *
 * @param columns its greatest width [characters], 48 to 200
 * @param rows the height of the plot itself [lines], 6 to 60; the height drawn differs by a few
 *     lines where that puts every tick on a line of its own
 * @param asciiOnly true for the 95 printable characters of ASCII, false for braille dots and box
 *     drawing
 */
public record TextStyle(int columns, int rows, boolean asciiOnly) {

  /** 70 columns by about 14 lines in braille dots. */
  public static final TextStyle UNICODE = new TextStyle(70, 14, false);

  /** 70 columns by about 14 lines in plain ASCII. */
  public static final TextStyle ASCII = new TextStyle(70, 14, true);

  /**
   * Checks the size.
   *
   * @param columns its greatest width [characters]
   * @param rows the height of the plot itself [lines]
   * @param asciiOnly whether only ASCII may be used
   * @throws IllegalArgumentException if the size is out of range
   */
  public TextStyle {
    if (columns < 48 || columns > 200 || rows < 6 || rows > 60) {
      throw new IllegalArgumentException(
          "a text plot must be 48 to 200 columns wide and 6 to 60 lines high, but was "
              + columns
              + " by "
              + rows);
    }
  }
}
