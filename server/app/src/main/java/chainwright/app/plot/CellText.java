package chainwright.app.plot;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words cut into the cells they take on a terminal. */
public final class CellText {

  private static final Map<Character, String> PLAIN =
      Map.ofEntries(
          Map.entry('−', "-"),
          Map.entry('–', "-"),
          Map.entry('—', "-"),
          Map.entry('→', "->"),
          Map.entry('←', "<-"),
          Map.entry('·', "|"),
          Map.entry('°', "deg"),
          Map.entry('≤', "<="),
          Map.entry('≥', ">="),
          Map.entry('±', "+/-"),
          Map.entry('×', "x"),
          Map.entry('∞', "inf"),
          Map.entry('µ', "u"),
          Map.entry('…', "..."));

  private CellText() {}

  /**
   * Returns how many cells of a terminal a text takes.
   *
   * @param text one line without control characters
   * @return the cells: none for a combining mark, two for a wide character, else one
   */
  public static int width(String text) {
    return text.codePoints().map(CellText::width).sum();
  }

  /**
   * Returns how many cells of a terminal a character takes.
   *
   * @param point its code point, no control character
   * @return none for a combining mark, two for a wide character, else one
   */
  public static int width(int point) {
    return joins(point) ? 0 : isWide(point) ? 2 : 1;
  }

  /** Returns one entry a cell; a wide character is followed by an empty one. */
  static List<String> cells(String text, boolean asciiOnly) {
    String line = Lettering.oneLine(text);
    return split(asciiOnly ? toAscii(line) : line);
  }

  /** Returns the cells of a text cut to a width, with an ellipsis if it was longer. */
  static List<String> fitted(String text, int width, boolean asciiOnly) {
    List<String> cells = cells(text, asciiOnly);
    if (cells.size() <= width) {
      return cells;
    }
    List<String> mark = cells("…", asciiOnly);
    List<String> cut = new ArrayList<>(cells.subList(0, Math.max(0, width - mark.size())));
    // A wide character must not lose its second half.
    int next = cut.size();
    if (next > 0 && cells.get(next).isEmpty()) {
      cut.set(next - 1, " ");
    }
    cut.addAll(mark);
    return cut;
  }

  private static List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < line.length(); ) {
      int point = line.codePointAt(i);
      String piece = Character.toString(point);
      i += piece.length();
      if (joins(point)) {
        int base = cells.size() - 1;
        while (base > 0 && cells.get(base).isEmpty()) {
          base--;
        }
        if (base >= 0) {
          cells.set(base, cells.get(base) + piece);
        }
        continue;
      }
      cells.add(piece);
      if (isWide(point)) {
        cells.add("");
      }
    }
    return cells;
  }

  private static boolean joins(int point) {
    int type = Character.getType(point);
    return type == Character.NON_SPACING_MARK
        || type == Character.ENCLOSING_MARK
        || type == Character.FORMAT;
  }

  /**
   * Returns whether a terminal gives a character two cells.
   *
   * <p>Source: the blocks marked W and F in Unicode Standard Annex 11, East Asian Width, rounded to
   * whole blocks (from memory).
   */
  private static boolean isWide(int point) {
    return (point >= 0x1100 && point <= 0x115f)
        || (point >= 0x2e80 && point <= 0xa4cf)
        || (point >= 0xac00 && point <= 0xd7a3)
        || (point >= 0xf900 && point <= 0xfaff)
        || (point >= 0xfe30 && point <= 0xfe6f)
        || (point >= 0xff00 && point <= 0xff60)
        || (point >= 0xffe0 && point <= 0xffe6)
        || (point >= 0x1f300 && point <= 0x1faff)
        || (point >= 0x20000 && point <= 0x3fffd);
  }

  private static String toAscii(String line) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < line.length(); i++) {
      String known = PLAIN.get(line.charAt(i));
      plain.append(known == null ? String.valueOf(line.charAt(i)) : known);
    }
    String apart = Normalizer.normalize(plain, Normalizer.Form.NFKD);
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < apart.length(); ) {
      int point = apart.codePointAt(i);
      i += Character.charCount(point);
      if (point >= ' ' && point <= '~') {
        out.append((char) point);
      } else if (!joins(point)) {
        out.append('?');
      }
    }
    return out.toString();
  }
}
