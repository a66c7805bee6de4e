package chainwright.app.cli;

import chainwright.app.plot.CellText;

/**
 * A line of a file as a terminal shows it, and which of its cells are meant.
 *
 * @param text the line: a tab goes to the next of every fourth cells, any other control character
 *     is replaced, and what has no room is left out at an ellipsis
 * @param before how many cells stand before those that are meant
 * @param marked how many cells are meant, 1 or more
 */
record SourceLine(String text, int before, int marked) {

  private static final int TAB = 4;
  private static final String LEFT_OUT = "\u2026";

  /**
   * Lays a line out.
   *
   * @param line the line, without its end
   * @param start where the stretch that is meant begins
   * @param end where it ends; beyond the line for one that goes on
   * @param width how many cells there are
   */
  static SourceLine of(String line, int start, int end, int width) {
    String before = shown(line.substring(0, Math.min(start, line.length())), 0);
    int from = CellText.width(before);
    String meant =
        shown(line.substring(Math.min(start, line.length()), Math.min(end, line.length())), from);
    int marked = Math.max(1, CellText.width(meant));
    String after =
        shown(line.substring(Math.min(Math.max(start, end), line.length())), from + marked);
    if (from + CellText.width(meant) + CellText.width(after) <= width) {
      return new SourceLine(before + meant + after, from, marked);
    }
    // What stands behind gives way first, then what stands before.
    int room = Math.max(1, width - Math.min(marked, width / 2));
    String head = from <= room / 2 ? before : LEFT_OUT + end(before, room / 2 - 1);
    String tail = start(meant + after, width - CellText.width(head) - 1);
    boolean isWhole = tail.length() == meant.length() + after.length();
    return new SourceLine(
        head + tail + (isWhole ? "" : LEFT_OUT),
        CellText.width(head),
        Math.min(marked, Math.max(1, CellText.width(tail))));
  }

  private static String shown(String text, int startCell) {
    StringBuilder shown = new StringBuilder();
    int cell = startCell;
    for (int point : text.codePoints().toArray()) {
      if (point == '\t') {
        int blanks = TAB - cell % TAB;
        shown.append(" ".repeat(blanks));
        cell += blanks;
      } else {
        int safe = Character.isISOControl(point) ? 0xFFFD : point;
        shown.appendCodePoint(safe);
        cell += CellText.width(safe);
      }
    }
    return shown.toString();
  }

  /** The longest beginning of a text that takes at most so many cells. */
  private static String start(String text, int cells) {
    int left = cells;
    int end = 0;
    while (end < text.length()) {
      int point = text.codePointAt(end);
      left -= CellText.width(point);
      if (left < 0) {
        break;
      }
      end += Character.charCount(point);
    }
    return text.substring(0, end);
  }

  private static String end(String text, int cells) {
    int left = cells;
    int start = text.length();
    while (start > 0) {
      int point = text.codePointBefore(start);
      left -= CellText.width(point);
      if (left < 0) {
        break;
      }
      start -= Character.charCount(point);
    }
    return text.substring(start);
  }
}
