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
    int named = 0;
    for (Row.Cell cell : row.cells()) {
      named += cell.isNamed() ? 1 : 0;
    }
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
    for (Row row : run) {
      if (!row.cells().isEmpty()) {
        row.cells().get(0).first().setBlanks(wordWidth - width(row.head().text) + GAP);
      }
    }
    alignRuns(run, 0);
  }

  /** Aligns what stands after a column, in each run of lines that are alike in that column. */
  private static void alignRuns(List<Row> rows, int column) {
    int start = 0;
    while (start < rows.size()) {
      String shape = shape(rows.get(start), column);
      int end = start + 1;
      // A line that has ended before this column parts nothing, except at the first.
      while (end < rows.size()
          && (shape(rows.get(end), column).equals(shape)
              || (column > 0 && rows.get(end).cells().size() <= column))) {
        end++;
      }
      if (!shape.isEmpty()) {
        alignAfter(rows.subList(start, end), column);
      }
      start = end;
    }
  }

  private static void alignAfter(List<Row> alike, int column) {
    int widest = 0;
    boolean isMore = false;
    for (Row row : alike) {
      if (shapesColumn(row, column)) {
        widest = Math.max(widest, row.cells().get(column).width());
      }
    }
    for (Row row : alike) {
      if (column + 1 < row.cells().size()) {
        isMore = true;
        int padding = shapesColumn(row, column) ? widest - row.cells().get(column).width() : 0;
        row.cells().get(column + 1).first().setBlanks(padding + GAP);
      }
    }
    if (isMore) {
      alignRuns(alike, column + 1);
    }
  }

  /** What the lines must have in common: at the first column the dimension, later the name. */
  private static String shape(Row row, int column) {
    if (column >= row.cells().size()) {
      return "";
    }
    Row.Cell cell = row.cells().get(column);
    return column == 0 || cell.isNamed() ? cell.shape() : "value";
  }

  /** A cell shapes its column only if another setting follows it in the line. */
  private static boolean shapesColumn(Row row, int column) {
    return column + 1 < row.cells().size()
        && !row.cells().get(column + 1).isTail()
        && !row.cells().get(column).shape().equals("text");
  }

  static int width(String text) {
    return text.codePointCount(0, text.length());
  }
}
