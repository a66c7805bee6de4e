package chainwright.dsp.filter;

import java.util.ArrayList;
import java.util.List;

/**
 * Looks for what an engineer asks of a response: where it crosses a level, and how high and low it
 * gets within a band.
 *
 * <p>The response is looked at on a grid of 48 points an octave and refined between points, so that
 * anything narrower than a 48th of an octave may be missed.
 */
public final class ResponseSearch {

  /** The level of a corner [dB]: half the power. Source: {@code 10 log10(1/2)}. */
  public static final double HALF_POWER_DB = 10 * Math.log10(0.5);

  private static final int POINTS_PER_OCTAVE = 48;
  private static final int BISECTIONS = 60;
  private static final double GOLDEN_SECTION = (Math.sqrt(5) - 1) / 2;

  private ResponseSearch() {}

  /**
   * The highest or lowest point of a response.
   *
   * @param hertz where [Hz]
   * @param decibels how much [dB], negative infinity at a null
   */
  public record Extreme(double hertz, double decibels) {}

  /**
   * Finds the frequencies at which a response crosses a level, such as the real corners of stacked
   * filters at {@link #HALF_POWER_DB}.
   *
   * @param response the response
   * @param levelDb the level [dB]
   * @param lowestHz where to begin [Hz], above 0
   * @param highestHz where to end [Hz]
   * @return the frequencies [Hz], rising, empty if the level is never crossed
   * @throws IllegalArgumentException if the band does not rise from above 0 Hz
   */
  public static List<Double> findCrossings(
      Response response, double levelDb, double lowestHz, double highestHz) {
    double[] hertz = grid(lowestHz, highestHz);
    double[] decibels = response.toDecibels(hertz);
    List<Double> crossings = new ArrayList<>();
    for (int i = 1; i < hertz.length; i++) {
      boolean above = decibels[i - 1] >= levelDb;
      if (above != decibels[i] >= levelDb) {
        crossings.add(bisect(response, levelDb, hertz[i - 1], hertz[i], above));
      }
    }
    return List.copyOf(crossings);
  }

  /**
   * Finds the highest point within a band.
   *
   * @param response the response
   * @param lowestHz where the band begins [Hz], above 0
   * @param highestHz where it ends [Hz]
   * @return the highest point
   * @throws IllegalArgumentException if the band does not rise from above 0 Hz
   */
  public static Extreme findHighest(Response response, double lowestHz, double highestHz) {
    return findExtreme(response, lowestHz, highestHz, 1);
  }

  /**
   * Finds the lowest point within a band.
   *
   * @param response the response
   * @param lowestHz where the band begins [Hz], above 0
   * @param highestHz where it ends [Hz]
   * @return the lowest point
   * @throws IllegalArgumentException if the band does not rise from above 0 Hz
   */
  public static Extreme findLowest(Response response, double lowestHz, double highestHz) {
    return findExtreme(response, lowestHz, highestHz, -1);
  }

  private static double[] grid(double lowestHz, double highestHz) {
    double octaves = Math.log(highestHz / lowestHz) / Math.log(2);
    int points = octaves > 0 ? 2 + (int) Math.ceil(octaves * POINTS_PER_OCTAVE) : 2;
    return FrequencyGrid.logarithmic(lowestHz, highestHz, points).toHertz();
  }

  private static double bisect(
      Response response, double levelDb, double fromHz, double toHz, boolean aboveAtStart) {
    double low = fromHz;
    double high = toHz;
    for (int i = 0; i < BISECTIONS; i++) {
      double middle = Math.sqrt(low * high);
      if (response.decibelsAt(middle) >= levelDb == aboveAtStart) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.sqrt(low * high);
  }

  /** Best grid point, then golden section between its neighbours. */
  private static Extreme findExtreme(
      Response response, double lowestHz, double highestHz, int sign) {
    double[] hertz = grid(lowestHz, highestHz);
    double[] decibels = response.toDecibels(hertz);
    int best = 0;
    for (int i = 1; i < hertz.length; i++) {
      if (sign * decibels[i] > sign * decibels[best]) {
        best = i;
      }
    }
    double low = hertz[Math.max(best - 1, 0)];
    double high = hertz[Math.min(best + 1, hertz.length - 1)];
    for (int i = 0; i < BISECTIONS; i++) {
      double width = GOLDEN_SECTION * (high - low);
      double left = high - width;
      double right = low + width;
      if (sign * response.decibelsAt(left) >= sign * response.decibelsAt(right)) {
        high = right;
      } else {
        low = left;
      }
    }
    double middle = (low + high) / 2;
    double refined = response.decibelsAt(middle);
    return sign * refined > sign * decibels[best]
        ? new Extreme(middle, refined)
        : new Extreme(hertz[best], decibels[best]);
  }
}
