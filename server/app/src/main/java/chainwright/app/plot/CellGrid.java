package chainwright.app.plot;

import java.util.Arrays;
import java.util.List;

/** A sheet of terminal cells, written on in layers and read off as lines. */
final class CellGrid {

  private static final String BLANK = " ";

  private final String[][] cells;
  private final boolean[][] taken;

  CellGrid(int columns, int rows) {
    cells = new String[rows][columns];
    taken = new boolean[rows][columns];
    for (String[] row : cells) {
      Arrays.fill(row, BLANK);
    }
  }

  /** Writes a character that words may cover; places off the sheet are passed over. */
  void put(int column, int row, String cell) {
    if (isOn(column, row)) {
      cells[row][column] = cell;
    }
  }

  /** Writes a character that words may not cover. */
  void putFirm(int column, int row, String cell) {
    put(column, row, cell);
    if (isOn(column, row)) {
      taken[row][column] = true;
    }
  }

  /** Writes words that others may not cover, cut at the edge of the sheet. */
  void write(int column, int row, List<String> words) {
    for (int i = 0; i < words.size(); i++) {
      putFirm(column + i, row, words.get(i));
    }
  }

  /** Returns whether words and a cell on each side of them meet nothing firm. */
  boolean isFree(int column, int row, int width) {
    if (!isOn(column, row) || !isOn(column + width - 1, row)) {
      return false;
    }
    for (int c = column - 1; c <= column + width; c++) {
      if (isOn(c, row) && taken[row][c]) {
        return false;
      }
    }
    return true;
  }

  void appendTo(StringBuilder out) {
    for (String[] row : cells) {
      out.append(String.join("", row).stripTrailing()).append('\n');
    }
  }

  private boolean isOn(int column, int row) {
    return row >= 0 && row < cells.length && column >= 0 && column < cells[row].length;
  }
}
