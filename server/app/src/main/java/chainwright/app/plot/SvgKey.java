package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Names the lines of a square plot beside it, each after a sample: inside there is little room that
 * no line crosses.
 */
final class SvgKey {

  private static final double SIZE_PX = 11;
  private static final double SAMPLE_PX = 20;
  private static final double GAP_PX = 18;
  private static final double ROW_PX = 16;

  /** A line to be named. */
  private record Entry(String name, String colour, String stroke) {}

  private final SvgInk ink;
  private final double left;
  private final double right;
  private final List<Entry> entries = new ArrayList<>();

  /** Makes an empty key between two edges [px]. */
  SvgKey(SvgInk ink, double left, double right) {
    this.ink = ink;
    this.left = left;
    this.right = right;
  }

  /** Adds a line by the attributes it is drawn with; one without a name is passed over. */
  void add(String name, String colour, String stroke) {
    String words = Lettering.fitted(Lettering.oneLine(name), SIZE_PX, right - left - SAMPLE_PX - 6);
    if (!words.isEmpty()) {
      entries.add(new Entry(words, colour, stroke));
    }
  }

  /** Draws the names in rows of which the last stands on a height [px]. */
  void draw(double bottom) {
    List<List<Entry>> rows = new ArrayList<>();
    double x = right;
    for (Entry entry : entries) {
      if (rows.isEmpty() || x + width(entry) > right) {
        rows.add(new ArrayList<>());
        x = left;
      }
      rows.get(rows.size() - 1).add(entry);
      x += width(entry) + GAP_PX;
    }
    double y = bottom - ROW_PX * (rows.size() - 1);
    for (List<Entry> row : rows) {
      x = left;
      for (Entry entry : row) {
        ink.line(x, y - 4, x + SAMPLE_PX, y - 4, entry.stroke());
        ink.text(
            x + SAMPLE_PX + 5, y, entry.name(), "font-size=\"11\" fill=\"" + entry.colour() + "\"");
        x += width(entry) + GAP_PX;
      }
      y += ROW_PX;
    }
  }

  private static double width(Entry entry) {
    return SAMPLE_PX + 5 + Lettering.width(entry.name(), SIZE_PX);
  }
}
