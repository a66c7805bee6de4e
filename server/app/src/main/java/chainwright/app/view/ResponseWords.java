package chainwright.app.view;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.quantity.SampleRate;
import java.util.List;

/** Says a whole response in one line: how high it gets, and how low. */
public final class ResponseWords {

  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;
  private static final double FLAT_DB = 0.05;

  /** Where less passes than this, what passes is of more interest [dB]. */
  private static final double BAND_BELOW_DB = -20;

  private static final int POINTS = 481;

  private ResponseWords() {}

  /** The highest or lowest point of a response [Hz], [dB]. */
  private record Extreme(double hertz, double decibels) {}

  /**
   * Says a response from 20 Hz to 20 kHz, or to half the sample rate.
   *
   * @param response the response
   * @param rate the sample rate
   * @return such as "−6.0 dB at 20 Hz to +2.0 dB at 12 kHz", "0.0 dB throughout", or of a band "0.0
   *     dB at 7 kHz, 3 dB less at 5 kHz and 9 kHz"
   */
  public static String of(Response response, SampleRate rate) {
    double top = Math.min(HIGHEST_HZ, rate.nyquist().hertz() * 0.999);
    double[] hertz = FrequencyGrid.logarithmic(LOWEST_HZ, top, POINTS).toHertz();
    double[] decibels = response.toDecibels(hertz);
    Extreme low = extreme(hertz, decibels, -1);
    Extreme high = extreme(hertz, decibels, 1);
    boolean isFlat =
        high.decibels() - low.decibels() < FLAT_DB
            || (Double.isInfinite(high.decibels()) && high.decibels() == low.decibels());
    if (low.decibels() < BAND_BELOW_DB && !isFlat) {
      return band(response, high, top);
    }
    return isFlat
        ? Readings.gain(high.decibels()) + " throughout"
        : Readings.gainAt(low.decibels(), low.hertz())
            + " to "
            + Readings.gainAt(high.decibels(), high.hertz());
  }

  /**
   * Finds the highest or lowest point, between the points of the grid by the parabola through three
   * of them over the logarithm of the frequency.
   */
  private static Extreme extreme(double[] hertz, double[] decibels, int sign) {
    int best = 0;
    for (int i = 1; i < hertz.length; i++) {
      if (sign * decibels[i] > sign * decibels[best]) {
        best = i;
      }
    }
    if (best == 0 || best == hertz.length - 1 || Double.isInfinite(decibels[best])) {
      return new Extreme(hertz[best], decibels[best]);
    }
    double before = decibels[best - 1];
    double behind = decibels[best + 1];
    double bend = before - 2 * decibels[best] + behind;
    double part = bend == 0 || !Double.isFinite(bend) ? 0 : (before - behind) / (2 * bend);
    return new Extreme(
        hertz[best] * Math.pow(hertz[best + 1] / hertz[best], part),
        decibels[best] - (before - behind) * part / 4);
  }

  /** Says what passes rather than how much does not. */
  private static String band(Response response, Extreme high, double top) {
    double edgeDb = high.decibels() + ResponseSearch.HALF_POWER_DB;
    List<Double> edges = ResponseSearch.findCrossings(response, edgeDb, LOWEST_HZ, top);
    List<String> where = edges.stream().map(Readings::frequency).toList();
    int last = where.size() - 1;
    return Readings.gainAt(high.decibels(), high.hertz())
        + (where.isEmpty()
            ? ""
            : ", 3 dB less at "
                + String.join(", ", where.subList(0, last))
                + (last > 0 ? " and " : "")
                + where.get(last));
  }

  /**
   * Returns the mean gain of a response in a part of the spectrum, each octave counting alike.
   *
   * @param response the response
   * @param lowHz the lower end [Hz]; below 20 Hz nothing counts
   * @param highHz the upper end [Hz], above the lower
   * @return the mean of the gain in dB [dB]; negative infinity if nothing passes somewhere
   */
  public static double meanDb(Response response, double lowHz, double highHz) {
    int points = 48;
    double low = Math.max(lowHz, LOWEST_HZ);
    double[] hertz = new double[points];
    for (int i = 0; i < points; i++) {
      hertz[i] = low * Math.pow(highHz / low, (i + 0.5) / points);
    }
    double sum = 0;
    for (double decibels : response.toDecibels(hertz)) {
      sum += decibels;
    }
    return sum / points;
  }
}
