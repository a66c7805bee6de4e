package chainwright.notation.text;

import java.util.Arrays;

/** Where each line of a text begins. A line ends with LF, CRLF or CR. Lines count from 0. */
public final class LineIndex {

  private final int[] starts;
  private final int length;

  private LineIndex(int[] starts, int length) {
    this.starts = starts;
    this.length = length;
  }

  /**
   * Finds the lines of a text.
   *
   * @param text any text
   * @return its index; an empty text has one empty line
   */
  public static LineIndex of(String text) {
    int[] starts = new int[Math.max(16, text.length() / 24)];
    int count = 1;
    int length = text.length();
    for (int i = 0; i < length; i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && !(i + 1 < length && text.charAt(i + 1) == '\n'))) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, count * 2);
        }
        starts[count++] = i + 1;
      }
    }
    return new LineIndex(Arrays.copyOf(starts, count), length);
  }

  /**
   * Returns how many lines there are.
   *
   * @return the count, 1 or more
   */
  public int lineCount() {
    return starts.length;
  }

  /**
   * Returns the line that holds an offset.
   *
   * @param offset an offset from 0 to the text's length
   * @return the line, from 0
   */
  public int lineAt(int offset) {
    int found = Arrays.binarySearch(starts, offset);
    return found >= 0 ? found : -found - 2;
  }

  /**
   * Returns where a line begins.
   *
   * @param line the line; one past the last gives the text's length
   * @return its first offset
   */
  public int startOf(int line) {
    return line >= starts.length ? length : starts[Math.max(0, line)];
  }
}
