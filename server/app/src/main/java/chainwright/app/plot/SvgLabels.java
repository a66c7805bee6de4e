package chainwright.app.plot;

import chainwright.app.plot.LabelField.Choice;
import chainwright.app.plot.LabelField.Ridge;
import chainwright.app.plot.LabelField.Spot;
import java.util.ArrayList;
import java.util.List;

/** Writes the words inside the frame: beside marks, and along curves with a sample of the line. */
final class SvgLabels {

  static final double SIZE_PX = 11;

  private static final double ASCENT_PX = 9;
  private static final double DESCENT_PX = 3;
  private static final double[] RADII_PX = {7, 14, 24, 38, 56};
  private static final double SAMPLE_PX = 20;
  private static final double PLACES = 24;

  private final SvgInk ink;
  private final PlotTheme theme;
  private final LabelField field;

  SvgLabels(SvgInk ink, PlotTheme theme, LabelField field) {
    this.ink = ink;
    this.theme = theme;
    this.field = field;
  }

  /** Writes a mark's word as near as there is room, with a leader where it stands off. */
  void besideMark(double x, double y, String label) {
    if (label.isEmpty()) {
      return;
    }
    double width = Lettering.width(label, SIZE_PX);
    List<Spot> spots = new ArrayList<>();
    for (double radius : RADII_PX) {
      for (int turn = 0; turn < 16; turn++) {
        double angle = turn * Math.PI / 8;
        double dx = radius * Math.cos(angle);
        double dy = radius * Math.sin(angle);
        boolean rightwards = dx > 0.3 * radius;
        boolean leftwards = dx < -0.3 * radius;
        double left = x + dx - (rightwards ? 0 : leftwards ? width : width / 2);
        double middle = y + dy + (rightwards || leftwards ? 0 : Math.signum(dy) * 5);
        spots.add(
            new Spot(
                new Box(left, middle - ASCENT_PX + 3, left + width, middle + DESCENT_PX + 3),
                leftwards ? "end" : "start",
                radius + (rightwards ? 0 : 2) + (dy > 0 ? 1 : 0)));
      }
    }
    Choice choice = field.choose(spots);
    Box box = choice.spot().box();
    double nearX = Math.max(box.left() - 1, Math.min(box.right() + 1, x));
    double nearY = Math.max(box.top(), Math.min(box.bottom(), y));
    double reach = Math.hypot(nearX - x, nearY - y);
    if (reach > 15) {
      double start = 4.5 / reach;
      ink.line(
          x + (nearX - x) * start,
          y + (nearY - y) * start,
          nearX,
          nearY,
          "stroke=\"" + theme.quietInk() + "\" stroke-width=\".8\"");
      for (double along = start; along < 1; along += 3 / reach) {
        double atX = x + (nearX - x) * along;
        double atY = y + (nearY - y) * along;
        field.block(new Box(atX - 1, atY - 1, atX + 1, atY + 1));
      }
    }
    write(choice, label, theme.ink(), 0);
  }

  /** Writes a curve's name along it, after a short sample of its line. */
  void alongCurve(String label, String colour, String sampleStroke, Ridge ridge) {
    if (label.isEmpty()) {
      return;
    }
    double width = Lettering.width(label, SIZE_PX) + SAMPLE_PX + 4;
    Box area = field.area();
    List<Spot> spots = new ArrayList<>();
    for (int place = 0; place <= PLACES; place++) {
      double along = place / PLACES;
      double offCentre = Math.abs(along - 0.6) * 6;
      double left = area.left() + 4 + (area.width() - width - 8) * along;
      double highest = ridge.highestBetween(left, left + width);
      double lowest = ridge.lowestBetween(left, left + width);
      double middle = left + width / 2;
      if (highest <= lowest) {
        double bias = offCentre + doubt(ridge, middle);
        spots.add(line(left, width, highest - 11, bias + gap(ridge.middle(middle) - highest)));
        spots.add(line(left, width, lowest + 11, bias + gap(lowest - ridge.middle(middle)) + 1));
      }
      double x = area.left() + area.width() * along;
      double y = ridge.middle(x);
      if (!Double.isNaN(y)) {
        double bias = offCentre + doubt(ridge, x) + 3;
        spots.add(line(x + 8, width, y, bias));
        spots.add(line(x - 8 - width, width, y, bias));
      }
    }
    if (spots.isEmpty()) {
      spots.add(line(area.left() + 6, width, area.bottom() - 8, 0));
    }
    Choice choice = field.choose(spots);
    Box box = choice.spot().box();
    write(choice, label, colour, SAMPLE_PX + 4);
    double middle = (box.top() + box.bottom()) / 2;
    ink.line(box.left(), middle, box.left() + SAMPLE_PX, middle, sampleStroke);
  }

  private static double gap(double gapPx) {
    return Double.isFinite(gapPx) ? 0.8 * Math.max(0, gapPx) : 40;
  }

  /** A name where two curves run together could be either's. */
  private double doubt(Ridge ridge, double x) {
    return 2 * Math.max(0, 12 - field.nearest(ridge, x));
  }

  private static Spot line(double left, double width, double middle, double bias) {
    return new Spot(new Box(left, middle - 6, left + width, middle + 6), "start", bias);
  }

  private void write(Choice choice, String label, String colour, double indent) {
    Box box = choice.spot().box();
    if (choice.crowded()) {
      ink.rect(box, "fill=\"" + theme.plate() + "\" fill-opacity=\".85\"");
    }
    String anchor = choice.spot().anchor();
    ink.text(
        choice.spot().textX() + indent,
        box.bottom() - DESCENT_PX,
        label,
        "font-size=\"11\" fill=\""
            + colour
            + "\""
            + (anchor.equals("start") ? "" : " text-anchor=\"" + anchor + "\""));
  }
}
