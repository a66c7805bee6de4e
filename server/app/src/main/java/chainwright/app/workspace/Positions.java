package chainwright.app.workspace;

import chainwright.notation.text.LineIndex;

/**
 * Converts between offsets in a text and the places an editor counts. The only class that does.
 *
 * @param text the text
 * @param lines its lines
 * @param encoding the editor's units
 */
public record Positions(String text, LineIndex lines, PositionEncoding encoding) {

  /**
   * Returns the offset of a place. A place past the end of its line counts as the line's end, one
   * past the last line as the text's end, one inside a character as the character's start.
   *
   * @param position the place
   * @return the offset [UTF-16 units], from 0 to the text's length
   */
  public int offsetOf(TextPosition position) {
    if (position.line() < 0) {
      return 0;
    }
    if (position.line() >= lines.lineCount()) {
      return text.length();
    }
    int offset = lines.startOf(position.line());
    int end = lineEnd(position.line());
    int left = position.character();
    while (offset < end) {
      int codePoint = text.codePointAt(offset);
      left -= encoding.unitsOf(codePoint);
      if (left < 0) {
        break;
      }
      offset += Character.charCount(codePoint);
    }
    return offset;
  }

  /**
   * Returns the place of an offset.
   *
   * @param offset the offset [UTF-16 units]; outside the text it counts as the nearer end
   * @return the place
   */
  public TextPosition positionOf(int offset) {
    int inside = Math.max(0, Math.min(offset, text.length()));
    int line = lines.lineAt(inside);
    int start = lines.startOf(line);
    if (encoding == PositionEncoding.UTF_16) {
      return new TextPosition(line, inside - start);
    }
    int units = 0;
    for (int at = start; at < inside; ) {
      int codePoint = text.codePointAt(at);
      units += encoding.unitsOf(codePoint);
      at += Character.charCount(codePoint);
    }
    return new TextPosition(line, units);
  }

  private int lineEnd(int line) {
    int start = lines.startOf(line);
    int end = lines.startOf(line + 1);
    while (end > start && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
      end--;
    }
    return end;
  }
}
