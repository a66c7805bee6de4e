package chainwright.notation.format;

import java.util.List;

/**
 * Sets the gaps inside lines. In a run of lines the words form a column; values form columns where
 * neighbouring lines begin alike, as a row of bells does.
 */
final class Columns {

  private static final int GAP = 2;

  private Columns() {}

  /** Sets the gaps of one line by itself: wider ones where it holds two or more named settings. */
  static void spread(Row row) {
    long named = row.cells().stream().filter(Row.Cell::isNamed).count();
    int gap = named >= 2 ? GAP : 1;

    boolean isFirst = true;
    for (Row.Cell cell : row.cells()) {
      // A name or a title belongs to its word: `insert "box"  send 0 dBu  return 0 dBu`.
      boolean isClose = isFirst && (row.isContinuation() || cell.shape().equals("text"));
      cell.first().setBlanks(isClose ? 1 : gap);
      isFirst = false;
    }
  }

  /** Aligns a run of lines. */
  static void align(List<Row> run) {
    if (run.size() == 1) {
      spread(run.get(0));
      return;
    }
    int wordWidth = 0;
    for (Row row : run) {
      if (!row.cells().isEmpty()) {
        wordWidth = Math.max(wordWidth, width(row.head().text));
      }
    }
    int start = 0;
    while (start < run.size()) {
      int end = start + 1;
      while (end < run.size() && isAlike(run.get(end - 1), run.get(end))) {
        end++;
      }
      alignCells(run.subList(start, end), wordWidth);
      start = end;
    }
  }

  private static boolean isAlike(Row above, Row below) {
    return !above.cells().isEmpty()
        && !below.cells().isEmpty()
        && above.cells().get(0).shape().equals(below.cells().get(0).shape());
  }

  private static void alignCells(List<Row> alike, int wordWidth) {
    for (Row row : alike) {
      if (!row.cells().isEmpty()) {
        row.cells().get(0).first().setBlanks(wordWidth - width(row.head().text) + GAP);
      }
    }
    boolean isMore = true;
    for (int column = 0; isMore; column++) {
      isMore = false;
      int widest = 0;
      for (Row row : alike) {
        if (isInColumn(row, column)) {
          isMore = true;
          widest = Math.max(widest, row.cells().get(column).width());
        }
      }
      for (Row row : alike) {
        if (column + 1 < row.cells().size()) {
          isMore = true;
          int padding = isInColumn(row, column) ? widest - row.cells().get(column).width() : 0;
          row.cells().get(column + 1).first().setBlanks(padding + GAP);
        }
      }
    }
  }

  /** A cell shapes its column only if another setting follows it in the line. */
  private static boolean isInColumn(Row row, int column) {
    return column + 1 < row.cells().size()
        && !row.cells().get(column + 1).isTail()
        && !row.cells().get(column).shape().equals("text");
  }

  static int width(String text) {
    return text.codePointCount(0, text.length());
  }
}
