package chainwright.dsp.signal;

import chainwright.quantity.SampleRate;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/**
 * A change of sample rate, such as from 44.1 to 48 kHz: a sinc under a Kaiser window, evaluated
 * where the new samples fall.
 *
 * <p>The pass band reaches to 0.45 of the lower rate and is flat there within 1e-6 dB; from 0.5 of
 * it on, images and aliases lie at least 150 dB down by design, 140 dB with everything that
 * rounding adds. There is no delay: the first new sample is the first old one, and both ends count
 * as surrounded by silence. To the same rate, samples pass as they are.
 *
 * <p>Source: J. F. Kaiser and R. W. Schafer, On the use of the I0-sinh window for spectrum
 * analysis, IEEE Transactions on Acoustics, Speech, and Signal Processing 28(1), 1980 (from
 * memory), for the window and its length; the arrangement in phases: R. E. Crochiere and L. R.
 * Rabiner, Multirate Digital Signal Processing, 1983, chapter 3 (from memory).
 */
public final class RateConversion {

  private static final double ATTENUATION_DB = 150;
  private static final double PASS_BAND = 0.45;
  private static final double STOP_BAND = 0.5;

  /** More coefficients than these are computed as they are needed, from a table [doubles]. */
  private static final int MOST_COEFFICIENTS = 1 << 19;

  private final int up;
  private final int down;
  private final int reach;
  private final PhaseRows rows;

  private RateConversion(int up, int down, int reach, PhaseRows rows) {
    this.up = up;
    this.down = down;
    this.reach = reach;
    this.rows = rows;
  }

  /**
   * Designs a conversion.
   *
   * @param from the rate of what goes in, a whole number of hertz
   * @param to the rate of what comes out, a whole number of hertz
   * @return the conversion
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public static RateConversion design(SampleRate from, SampleRate to) {
    int fromHz = wholeHertz(from);
    int toHz = wholeHertz(to);
    int common = BigInteger.valueOf(fromHz).gcd(BigInteger.valueOf(toHz)).intValueExact();
    int up = toHz / common;
    int down = fromHz / common;
    if (up == down) {
      return new RateConversion(1, 1, 0, new PhaseRows.Exact(List.of(new double[] {1})));
    }
    // Frequencies are relative to the rate of what goes in, times are in its samples.
    double lower = Math.min(1, (double) up / down);
    double transition = 2 * Math.PI * (STOP_BAND - PASS_BAND) * lower;
    int reach = KaiserWindow.order(ATTENUATION_DB, transition) / 2 + 1;
    WindowedSinc kernel =
        new WindowedSinc(
            (STOP_BAND + PASS_BAND) / 2 * lower, reach, KaiserWindow.ofAttenuation(ATTENUATION_DB));
    long coefficients = 2L * reach * up;
    PhaseRows rows =
        coefficients <= MOST_COEFFICIENTS
            ? exactRows(kernel, up)
            : new PhaseRows.Interpolated(kernel, up);
    return new RateConversion(up, down, reach, rows);
  }

  private static PhaseRows exactRows(WindowedSinc kernel, int up) {
    List<double[]> rows = new ArrayList<>();
    for (int phase = 0; phase < up; phase++) {
      rows.add(kernel.row((double) phase / up));
    }
    return new PhaseRows.Exact(rows);
  }

  private static int wholeHertz(SampleRate rate) {
    if (rate.hertz() != Math.rint(rate.hertz())) {
      throw new IllegalArgumentException(
          "the sample rate must be a whole number of hertz, but was " + rate.hertz() + " Hz");
    }
    return (int) rate.hertz();
  }

  /**
   * Returns how far a new sample looks ahead: it comes out once so many frames after it went in.
   *
   * @return the look-ahead [frames of what goes in], ≥ 0
   */
  public int lookAheadFrames() {
    return reach;
  }

  /**
   * Returns how long a signal becomes.
   *
   * @param inputFrames its length [frames]
   * @return the length of what comes out [frames]: every new frame that falls before its end
   */
  public long outputFrames(long inputFrames) {
    return Math.floorDiv(Math.multiplyExact(inputFrames, up) + down - 1, down);
  }

  /**
   * Starts a conversion.
   *
   * @param channelCount the number of channels, at least 1
   * @return the state, at the signal's start
   * @throws IllegalArgumentException if there is no channel
   */
  public RateConverter newConverter(int channelCount) {
    return new RateConverter(this, channelCount);
  }

  /** New frames for each of {@link #down} old ones. */
  int up() {
    return up;
  }

  /** Old frames for each of {@link #up} new ones. */
  int down() {
    return down;
  }

  PhaseRows rows() {
    return rows;
  }
}
