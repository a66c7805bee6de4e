package chainwright.app.plot;

import java.util.List;

/** Chooses the ends of a value axis by what is shown on it. */
final class AxisChoice {

  private static final double FAR = 1e6;
  private static final double[] SYMMETRIC_DB = {3, 6, 12, 18, 24};
  private static final double[] TOP_DB = {6, 12, 24, 36, 48, 60};
  private static final double DEEPEST_SHOWN_DB = 48;
  private static final double DEEPEST_REDUCTION_DB = 120;
  private static final double LEAST_CHAIN_ROOM_DB = 5.8;
  private static final double PASS_FILTER_DEPTH_DB = 15;
  private static final double PASS_FILTER_BOOST_DB = 5;

  private AxisChoice() {}

  /**
   * Returns an axis of gain for a stage and the chain before it. The chain gets twice the room that
   * the stage takes and may leave the sheet, for beside a high-pass a small bell would be flat.
   */
  static Axis gain(Extent stage, Extent chain) {
    double room = Math.max(LEAST_CHAIN_ROOM_DB, 2 * Math.max(stage.highOr(0), -stage.lowOr(0)));
    double low = chain.lowOr(0);
    double high = chain.highOr(0);
    // A chain that lies wholly outside of its room is shown all the same.
    return gain(
        stage
            .with(low > room ? low : Math.max(-room, low))
            .with(high < -room ? high : Math.min(room, high)));
  }

  /** Returns an axis of gain: symmetric for bells and shelves, hung from +6 dB for a filter. */
  private static Axis gain(Extent shown) {
    double high = shown.highOr(0);
    double low = shown.lowOr(0);
    boolean hung = low < -PASS_FILTER_DEPTH_DB && high <= PASS_FILTER_BOOST_DB;
    if (!hung) {
      double reach = Math.max(high, -low);
      for (double end : SYMMETRIC_DB) {
        if (reach <= end * 0.98) {
          return decibels(new ValueRange(-end, end));
        }
      }
    }
    double top = 6;
    for (double end : TOP_DB) {
      top = end;
      if (high <= end * 0.98) {
        break;
      }
    }
    if (high > top) {
      top = 12 * Math.ceil(Math.min(high, FAR) / 12);
    }
    double depth = low >= -23.5 ? 24 : DEEPEST_SHOWN_DB;
    if (high < -depth + 6) {
      // Everything lies far below 0 dB: show it where it is, rather than an empty sheet.
      top = 12 * Math.ceil(Math.max(high, -FAR) / 12) + 6;
      return decibels(new ValueRange(top - 54, top));
    }
    return decibels(new ValueRange(-depth, top));
  }

  /** Returns an axis with the decibel steps an engineer expects for these ends. */
  static Axis decibels(ValueRange range) {
    double span = range.span();
    double step =
        span <= 6 ? 1 : span <= 12 ? 3 : span <= 40 ? 6 : span <= 84 ? 12 : span <= 144 ? 20 : 0;
    if (span <= 2 || step == 0) {
      step = Axis.niceStep(span, 5);
    }
    return Axis.ofEven(range, step, 1, "dB");
  }

  /** Returns an axis of phase in whole multiples of 45, 90, 180 or 360 degrees. */
  static Axis phase(Extent shown) {
    double high = Math.max(0, shown.highOr(0));
    double low = Math.min(0, shown.lowOr(0));
    double step = 45;
    while ((high - low) / step > 6 && step < 1e9) {
      step *= 2;
    }
    double top = step * Math.ceil(high / step);
    double bottom = step * Math.floor(low / step);
    return phaseSteps(
        top > bottom ? new ValueRange(bottom, top) : new ValueRange(-step, step), step);
  }

  /** Returns a phase axis with given ends. */
  static Axis phaseOver(ValueRange range) {
    double step = 45;
    while (range.span() / step > 8 && step < 1e9) {
      step *= 2;
    }
    return phaseSteps(range, range.span() < 90 ? Axis.niceStep(range.span(), 5) : step);
  }

  /** Returns an even axis from zero, or from below it where values are negative. */
  static Axis fromZero(Extent shown, String unit) {
    double high = Math.max(0, shown.highOr(1));
    double low = Math.min(0, shown.lowOr(0));
    if (!(high > low)) {
      high = 1;
    }
    double step = Axis.niceStep(high - low, 4);
    return Axis.ofEven(
        new ValueRange(step * Math.floor(low / step), step * Math.ceil(high / step)),
        step,
        1,
        unit);
  }

  /** Returns an axis of gain reduction: a little above 0 dB at the top, room below the deepest. */
  static Axis reduction(Extent shown) {
    double deepest = Math.min(-1, shown.lowOr(-6));
    double low = deepest < -DEEPEST_REDUCTION_DB ? -DEEPEST_REDUCTION_DB : deepest;
    double high = Math.min(DEEPEST_REDUCTION_DB, Math.max(0, shown.highOr(0)));
    double step = niceDecibelStep((high - low) / 3.5);
    return Axis.ofEven(
        new ValueRange(step * Math.floor(low * 1.04 / step), step * Math.ceil(high / step + 0.01)),
        step,
        1,
        "dB");
  }

  /** The lowest and highest of some values, infinities and gaps aside. */
  record Extent(double low, double high) {

    static Extent ofCurves(List<Curve> curves, ValueRange window) {
      Extent extent = new Extent(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
      for (Curve curve : curves) {
        for (int i = 0; i < curve.x().size(); i++) {
          double x = curve.x().get(i);
          if (x >= window.low() && x <= window.high()) {
            extent = extent.with(curve.y().get(i));
          }
        }
      }
      return extent;
    }

    /** An infinity counts as "far down", so that a notch gets the deep axis. */
    Extent with(double value) {
      if (Double.isNaN(value) || value == Double.POSITIVE_INFINITY) {
        return this;
      }
      double bounded = Math.max(-FAR, Math.min(FAR, value));
      return new Extent(
          Math.min(low, bounded), Double.isInfinite(value) ? high : Math.max(high, bounded));
    }

    double lowOr(double other) {
      return low <= FAR ? low : other;
    }

    double highOr(double other) {
      return high >= -FAR ? high : other;
    }
  }

  private static Axis phaseSteps(ValueRange range, double step) {
    return Axis.ofEven(range, step, 1, "deg");
  }

  private static double niceDecibelStep(double rough) {
    for (double step : new double[] {0.5, 1, 2, 3, 6, 12, 24}) {
      if (rough <= step) {
        return step;
      }
    }
    return Axis.niceStep(rough, 1);
  }
}
