package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import java.util.stream.DoubleStream;

/** Frequencies to look at a response at: a rising list, evenly spaced in octaves. */
public final class FrequencyGrid {

  /** Where the audible grid begins [Hz]. */
  public static final double LOWEST_HZ = 10;

  /** Where the audible grid ends if the rate allows it [Hz]. */
  public static final double HIGHEST_HZ = 22_000;

  private final double[] hertz;

  private FrequencyGrid(double[] hertz) {
    this.hertz = hertz;
  }

  /**
   * Makes a grid of {@code points} frequencies in equal ratios, both ends included exactly.
   *
   * @param lowestHz the first frequency [Hz], above 0
   * @param highestHz the last frequency [Hz], above the first
   * @param points how many frequencies, 2 or more
   * @return the grid
   * @throws IllegalArgumentException if the ends or the number are out of range
   */
  public static FrequencyGrid logarithmic(double lowestHz, double highestHz, int points) {
    if (!(lowestHz > 0 && highestHz > lowestHz && Double.isFinite(highestHz)) || points < 2) {
      throw new IllegalArgumentException(
          "a grid must rise from above 0 Hz in 2 points or more, but was "
              + points
              + " points from "
              + lowestHz
              + " Hz to "
              + highestHz
              + " Hz");
    }
    double[] hertz = new double[points];
    double ratio = Math.log(highestHz / lowestHz) / (points - 1);
    for (int i = 0; i < points; i++) {
      hertz[i] = lowestHz * Math.exp(ratio * i);
    }
    hertz[points - 1] = highestHz;
    return new FrequencyGrid(hertz);
  }

  /**
   * Makes the grid from 10 Hz to 22 kHz or half the rate, whichever is lower.
   *
   * @param rate the sample rate
   * @param points how many frequencies, 2 or more
   * @return the grid
   * @throws IllegalArgumentException if there are fewer than 2 points
   */
  public static FrequencyGrid audible(SampleRate rate, int points) {
    return logarithmic(LOWEST_HZ, Math.min(HIGHEST_HZ, rate.nyquist().hertz()), points);
  }

  /**
   * Returns this grid with further frequencies in their places, such as corners and nulls.
   *
   * @param extraHertz the frequencies [Hz], finite, 0 or more, in any order
   * @return the grid, rising, without doubles
   * @throws IllegalArgumentException if a frequency is not finite or below 0 Hz
   */
  public FrequencyGrid with(double... extraHertz) {
    for (double extra : extraHertz) {
      if (!(extra >= 0 && Double.isFinite(extra))) {
        throw new IllegalArgumentException(
            "a frequency must be finite and 0 Hz or more, but was " + extra);
      }
    }
    return new FrequencyGrid(
        DoubleStream.concat(DoubleStream.of(hertz), DoubleStream.of(extraHertz))
            .sorted()
            .distinct()
            .toArray());
  }

  /**
   * Returns the number of frequencies.
   *
   * @return how many
   */
  public int size() {
    return hertz.length;
  }

  /**
   * Returns a copy of the frequencies.
   *
   * @return the frequencies [Hz], rising
   */
  public double[] toHertz() {
    return hertz.clone();
  }
}
