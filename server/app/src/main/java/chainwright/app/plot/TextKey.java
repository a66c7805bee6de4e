package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/** Writes the lines below a text plot: a sample of each line with its name, and stray words. */
final class TextKey {

  private static final int SAMPLE_CELLS = 5;
  private static final int GAP = 3;

  private final TextSigns signs;
  private final int columns;
  private final int left;

  TextKey(TextSigns signs, int columns, int left) {
    this.signs = signs;
    this.columns = columns;
    this.left = left;
  }

  void append(StringBuilder out, List<Curve> curves, List<String> homeless) {
    List<String> entries = new ArrayList<>();
    for (int i = 0; i < curves.size(); i++) {
      Curve curve = curves.get(i);
      if (!curve.label().isBlank()) {
        entries.add(sample(curve.role(), BranchNumbers.of(curves, i)) + " " + curve.label());
      }
    }
    for (String words : homeless) {
      entries.add(signs.mark() + " " + words);
    }
    int column = left;
    CellGrid line = new CellGrid(columns, 1);
    for (String entry : entries) {
      List<String> cells = signs.fitted(entry, columns - left);
      if (column > left && column + cells.size() > columns) {
        line.appendTo(out);
        line = new CellGrid(columns, 1);
        column = left;
      }
      line.write(column, 0, cells);
      column += cells.size() + GAP;
    }
    if (!entries.isEmpty()) {
      line.appendTo(out);
    }
  }

  private String sample(CurveRole role, int number) {
    String sample = sample(role);
    int middle = SAMPLE_CELLS / 2;
    return number == 0
        ? sample
        : sample.substring(0, middle) + signs.number(number) + sample.substring(middle + 1);
  }

  private String sample(CurveRole role) {
    if (signs.asciiOnly()) {
      return signs.letter(role).repeat(SAMPLE_CELLS);
    }
    DotRaster dots = new DotRaster(SAMPLE_CELLS, 1);
    PointRun flat = new PointRun();
    flat.add(0, 2);
    flat.add(2 * SAMPLE_CELLS - 1, 2);
    dots.draw(flat, role);
    StringBuilder sample = new StringBuilder();
    for (int c = 0; c < SAMPLE_CELLS; c++) {
      String cell = dots.cell(c, 0);
      sample.append(cell.isEmpty() ? "\u2800" : cell);
    }
    return sample.toString();
  }
}
