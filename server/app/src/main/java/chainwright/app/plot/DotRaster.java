package chainwright.app.plot;

/**
 * A field of dots, two by four a cell, in which lines are solid, dashed or dotted. A cell that the
 * stage's line runs through shows that line alone, for the dots of two lines would be neither.
 */
final class DotRaster {

  private static final int BRAILLE = 0x2800;
  private static final double NUDGE = 0.02;

  /** The bit of each dot of a cell, by row and column. Source: Unicode, block Braille Patterns. */
  private static final int[][] BITS = {{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}};

  private final int columns;
  private final int rows;
  private final int[] cells;
  private final boolean[] isStage;

  DotRaster(int columns, int rows) {
    this.columns = columns;
    this.rows = rows;
    this.cells = new int[columns * rows];
    this.isStage = new boolean[columns * rows];
  }

  /** Returns all dots across, and the middle of the first line of cells to that of the last. */
  static Box frame(int columns, int rows) {
    return new Box(0, 1.5, columns * 2 - 1, (rows - 1) * 4 + 1.5);
  }

  /** Draws a line; its dashes are counted along it. */
  void draw(PointRun run, CurveRole role) {
    double walked = 0;
    for (int i = 0; i + 1 < run.size(); i++) {
      double dx = run.x(i + 1) - run.x(i);
      double dy = run.y(i + 1) - run.y(i);
      double length = Math.hypot(dx, dy);
      int steps = Math.max(1, (int) Math.ceil(2 * Math.max(Math.abs(dx), Math.abs(dy))));
      for (int step = 0; step <= steps; step++) {
        double along = (double) step / steps;
        if (isInked(role, walked + along * length)) {
          ink(run.x(i) + along * dx, run.y(i) + along * dy, role == CurveRole.STAGE);
        }
      }
      walked += length;
    }
  }

  /** Returns the dots of a cell as a braille character, or an empty text for none. */
  String cell(int column, int row) {
    int dots = cells[row * columns + column];
    return dots == 0 ? "" : Character.toString(BRAILLE + dots);
  }

  private void ink(double x, double y, boolean heavy) {
    int column = (int) Math.floor(x + 0.5);
    // A level of 0 dB lies between two rows: however it is rounded, it must come to the same one.
    int row = (int) Math.floor(y + 0.5 + NUDGE);
    dot(column, row, heavy);
    if (heavy) {
      dot(column, row - 1, true);
    }
  }

  private void dot(int x, int y, boolean ofStage) {
    if (x >= 0 && x < 2 * columns && y >= 0 && y < 4 * rows) {
      int cell = y / 4 * columns + x / 2;
      if (ofStage && !isStage[cell]) {
        cells[cell] = 0;
        isStage[cell] = true;
      }
      if (ofStage || !isStage[cell]) {
        cells[cell] |= BITS[y % 4][x % 2];
      }
    }
  }

  private static boolean isInked(CurveRole role, double walked) {
    return switch (role) {
      case STAGE, BRANCH -> true;
      case CHAIN_SO_FAR -> walked % 6 < 3.2;
      case COMPARISON -> walked % 3 < 0.6;
      case RETURN -> walked % 10 < 7;
    };
  }
}
