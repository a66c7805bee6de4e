package chainwright.app.plot;

import java.util.List;

/**
 * Writes shapes as SVG with presentation attributes alone, for viewers that know no style sheets.
 *
 * <p>Only elements of SVG Tiny 1.2 are used, so that the plain renderers of editors draw them too.
 */
final class SvgInk {

  private static final double TOLERANCE_PX = 0.2;
  private static final int MOST_POINTS = 500;

  private final StringBuilder out = new StringBuilder(12_000);

  /** Opens the sheet and gives it a name for those who cannot see it. */
  /** Begins a picture that is shown at a height of its own, its width in proportion [px]. */
  void open(int width, int height, int shownHeight, String name) {
    int shownWidth = Math.round((float) width * shownHeight / height);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(shownWidth);
    out.append("\" height=\"").append(shownHeight);
    out.append("\" viewBox=\"0 0 ").append(width).append(' ').append(height);
    out.append("\" font-family=\"sans-serif\" role=\"img\">\n<title>");
    Lettering.appendEscaped(out, name);
    out.append("</title>\n");
  }

  String close() {
    return out.append("</svg>\n").toString();
  }

  void rect(Box box, String attributes) {
    out.append("<rect");
    number("x", box.left());
    number("y", box.top());
    number("width", box.width());
    number("height", box.height());
    end(attributes);
  }

  void circle(double x, double y, double radius, String attributes) {
    out.append("<circle");
    number("cx", x);
    number("cy", y);
    number("r", radius);
    end(attributes);
  }

  void line(double x0, double y0, double x1, double y1, String attributes) {
    out.append("<path d=\"");
    move(x0, y0);
    out.append('L');
    pair(tenths(x1), tenths(y1));
    out.append('"');
    end(attributes);
  }

  /** Draws straight lines of one kind, each given by four numbers, as one path. */
  void lines(double[] ends, int count, String attributes) {
    if (count == 0) {
      return;
    }
    out.append("<path d=\"");
    for (int i = 0; i < count; i += 4) {
      move(ends[i], ends[i + 1]);
      if (ends[i] == ends[i + 2]) {
        out.append('V');
        Numerals.appendTenths(out, tenths(ends[i + 3]));
      } else {
        out.append('H');
        Numerals.appendTenths(out, tenths(ends[i + 2]));
      }
    }
    out.append('"');
    end(attributes);
  }

  /** Draws the pieces of one line as one path. */
  void curve(List<PointRun> runs, String attributes) {
    if (runs.isEmpty()) {
      return;
    }
    out.append("<path d=\"");
    for (PointRun run : runs) {
      trace(thinned(run, MOST_POINTS / runs.size()));
    }
    out.append('"');
    end(attributes);
  }

  /** Fills the shape between a line and a straight edge from its last point back to its first. */
  void wash(PointRun run, double firstEdgeY, double lastEdgeY, String attributes) {
    PointRun simple = thinned(run, MOST_POINTS);
    if (simple.size() < 2) {
      return;
    }
    PointRun closed = new PointRun();
    closed.add(simple.x(0), firstEdgeY);
    for (int i = 0; i < simple.size(); i++) {
      closed.add(simple.x(i), simple.y(i));
    }
    closed.add(simple.x(simple.size() - 1), lastEdgeY);
    out.append("<path d=\"");
    trace(closed);
    out.append("Z\"");
    end(attributes);
  }

  void text(double x, double y, String words, String attributes) {
    if (words.isEmpty()) {
      return;
    }
    out.append("<text");
    number("x", x);
    number("y", y);
    if (!attributes.isEmpty()) {
      out.append(' ').append(attributes);
    }
    out.append('>');
    Lettering.appendEscaped(out, words);
    out.append("</text>\n");
  }

  void openGroup(String attributes) {
    out.append("<g ").append(attributes).append(">\n");
  }

  void closeGroup() {
    out.append("</g>\n");
  }

  /** Noise of a point each hundredth of a pixel would make a picture too large for a hover. */
  private static PointRun thinned(PointRun run, int most) {
    double tolerance = TOLERANCE_PX;
    PointRun simple = run.simplified(tolerance);
    while (simple.size() > Math.max(2, most)) {
      tolerance *= 2;
      simple = run.simplified(tolerance);
    }
    return simple;
  }

  private void trace(PointRun run) {
    int lastX = tenths(run.x(0));
    int lastY = tenths(run.y(0));
    out.append('M');
    pair(lastX, lastY);
    char command = 'l';
    for (int i = 1; i < run.size(); i++) {
      int x = tenths(run.x(i));
      int y = tenths(run.y(i));
      if (x == lastX && y == lastY) {
        continue;
      }
      out.append(command);
      pair(x - lastX, y - lastY);
      // After the first, a space or a minus sign is enough to begin the next pair.
      command = ' ';
      lastX = x;
      lastY = y;
    }
  }

  private void move(double x, double y) {
    out.append('M');
    pair(tenths(x), tenths(y));
  }

  private void pair(int xTenths, int yTenths) {
    Numerals.appendTenths(out, xTenths);
    if (yTenths >= 0) {
      out.append(' ');
    }
    Numerals.appendTenths(out, yTenths);
  }

  private void number(String name, double value) {
    out.append(' ').append(name).append("=\"");
    Numerals.appendTenths(out, tenths(value));
    out.append('"');
  }

  private void end(String attributes) {
    if (!attributes.isEmpty()) {
      out.append(' ').append(attributes);
    }
    out.append("/>\n");
  }

  private static int tenths(double value) {
    return (int) Math.round(value * 10);
  }
}
