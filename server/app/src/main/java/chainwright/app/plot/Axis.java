package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * One axis of a chart: its ends, its ticks and its unit.
 *
 * @param range its ends
 * @param logarithmic whether equal ratios are equally far apart; then both ends lie above 0
 * @param ticks the places named, rising, all inside the ends
 * @param fineLines places of thin lines between them
 * @param step the distance of evenly spaced ticks, or NaN where they are not even
 * @param unit the unit's sign
 */
record Axis(
    ValueRange range,
    boolean logarithmic,
    List<Tick> ticks,
    Samples fineLines,
    double step,
    String unit) {

  private static final double EDGE = 1e-9;
  private static final int FEWEST_TICKS = 3;

  /** A named place of an axis. */
  record Tick(double at, String label) {}

  Axis {
    ticks = List.copyOf(ticks);
  }

  /** Returns how far along the axis a value lies, 0 at the low end and 1 at the high end. */
  double fraction(double value) {
    if (logarithmic) {
      return value > 0
          ? Math.log(value / range.low()) / Math.log(range.high() / range.low())
          : Double.NaN;
    }
    return (value - range.low()) / range.span();
  }

  /** Returns the value that lies so far along the axis, the inverse of {@link #fraction}. */
  double at(double fraction) {
    return logarithmic
        ? range.low() * Math.pow(range.high() / range.low(), fraction)
        : range.low() + fraction * range.span();
  }

  boolean contains(double value) {
    return value >= range.low() && value <= range.high();
  }

  /** Returns the same axis with another upper end; its ticks stay. */
  Axis withHigh(double high) {
    return new Axis(new ValueRange(range.low(), high), logarithmic, ticks, fineLines, step, unit);
  }

  /** Returns an even axis whose ticks are the multiples of a step. */
  static Axis ofEven(ValueRange range, double step, double labelFactor, String unit) {
    List<Tick> ticks = new ArrayList<>();
    int decimals = decimalsFor(step * labelFactor);
    double slack = EDGE * range.span();
    for (double n = Math.ceil((range.low() - slack) / step);
        n * step <= range.high() + slack;
        n++) {
      ticks.add(new Tick(n * step, Numerals.text(n * step * labelFactor, decimals)));
    }
    return new Axis(range, false, ticks, Samples.of(), step, unit);
  }

  /** Returns a logarithmic frequency axis with ticks at 1, 2 and 5 of each decade. */
  static Axis ofFrequency(ValueRange range) {
    List<Tick> oneTwoFive = new ArrayList<>();
    List<Tick> all = new ArrayList<>();
    List<Double> fine = new ArrayList<>();
    double decade = Math.pow(10, Math.floor(Math.log10(range.low())));
    for (; decade <= range.high() && decade > 0; decade *= 10) {
      for (int digit = 1; digit <= 9; digit++) {
        double at = decade * digit;
        if (at < range.low() * (1 - EDGE) || at > range.high() * (1 + EDGE)) {
          continue;
        }
        Tick tick = new Tick(at, frequencyLabel(at, 2));
        all.add(tick);
        fine.add(at);
        if (digit == 1 || digit == 2 || digit == 5) {
          oneTwoFive.add(tick);
        }
      }
    }
    Samples lines = Samples.of(fine.stream().mapToDouble(Double::doubleValue).toArray());
    boolean wide = range.high() / range.low() > 20;
    List<Tick> ticks = wide ? oneTwoFive : all;
    if (ticks.size() < FEWEST_TICKS) {
      double step = niceStep(range.span(), 5);
      ticks = new ArrayList<>();
      for (double n = Math.ceil(range.low() / step); n * step <= range.high(); n++) {
        ticks.add(new Tick(n * step, frequencyLabel(n * step, 3)));
      }
    }
    return new Axis(range, true, thinned(ticks), lines, Double.NaN, "Hz");
  }

  /** Returns the largest of 1, 2 and 5 times a power of ten that cuts the span into so many. */
  static double niceStep(double span, int pieces) {
    double rough = span / pieces;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double digit = rough / power;
    return power * (digit > 5 ? 10 : digit > 2 ? 5 : digit > 1 ? 2 : 1);
  }

  private static List<Tick> thinned(List<Tick> ticks) {
    int keepEvery = 1 + ticks.size() / 16;
    List<Tick> kept = new ArrayList<>();
    for (int i = 0; i < ticks.size(); i += keepEvery) {
      kept.add(ticks.get(i));
    }
    return kept;
  }

  private static int decimalsFor(double step) {
    return step >= 1 && step == Math.rint(step) ? 0 : step >= 0.1 ? 1 : step >= 0.01 ? 2 : 3;
  }

  private static String frequencyLabel(double frequencyHz, int decimals) {
    return frequencyHz < 1000
        ? Numerals.text(frequencyHz, decimals)
        : Numerals.text(frequencyHz / 1000, decimals) + "k";
  }
}
