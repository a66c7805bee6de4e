package chainwright.dsp.signal;

import chainwright.quantity.SampleRate;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/**
 * A change of sample rate, such as from 44.1 to 48 kHz: a {@link RateFilter} evaluated where the
 * new samples fall.
 *
 * <p>The usual one is flat to 0.45 of the lower rate within 1e-6 dB; from 0.5 of it on, images and
 * aliases lie at least 150 dB down by design, 140 dB with everything that rounding adds. There is
 * no delay: the first new sample is the first old one, and both ends count as surrounded by
 * silence. To the same rate, samples pass as they are.
 *
 * <p>Source of the arrangement in phases: R. E. Crochiere and L. R. Rabiner, Multirate Digital
 * Signal Processing, 1983, chapter 3 (from memory).
 */
public final class RateConversion {

  /** More coefficients than these are computed as they are needed, from a table [doubles]. */
  private static final int MOST_COEFFICIENTS = 1 << 19;

  private final RateFilter filter;
  private final int up;
  private final int down;

  private RateConversion(RateFilter filter, int up, int down) {
    this.filter = filter;
    this.up = up;
    this.down = down;
  }

  /**
   * Designs the usual conversion.
   *
   * @param from the rate of what goes in, a whole number of hertz
   * @param to the rate of what comes out, a whole number of hertz
   * @return the conversion
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public static RateConversion design(SampleRate from, SampleRate to) {
    return design(RateFilter.usual(from, to));
  }

  /**
   * Designs a conversion. Its coefficients are computed for each converter.
   *
   * @param filter its low-pass
   * @return the conversion
   */
  public static RateConversion design(RateFilter filter) {
    int fromHz = (int) filter.from().hertz();
    int toHz = (int) filter.to().hertz();
    int common = BigInteger.valueOf(fromHz).gcd(BigInteger.valueOf(toHz)).intValueExact();
    return new RateConversion(filter, toHz / common, fromHz / common);
  }

  private PhaseRows designRows() {
    if (!filter.isNeeded()) {
      return new PhaseRows.Exact(List.of(new double[] {1}));
    }
    // Frequencies are relative to the rate of what goes in, times are in its samples.
    int reach = filter.reachFrames();
    WindowedSinc kernel =
        new WindowedSinc(filter.cutoffHertz() / filter.from().hertz(), reach, filter.window());
    long coefficients = 2L * reach * up;
    boolean isShort = coefficients <= MOST_COEFFICIENTS || up <= PhaseRows.Interpolated.SPACING;
    return isShort ? exactRows(kernel, up) : new PhaseRows.Interpolated(kernel, up);
  }

  private static PhaseRows exactRows(WindowedSinc kernel, int up) {
    List<double[]> rows = new ArrayList<>();
    for (int phase = 0; phase < up; phase++) {
      rows.add(kernel.row((double) phase / up));
    }
    return new PhaseRows.Exact(rows);
  }

  /**
   * Returns the low-pass.
   *
   * @return the filter, which knows both rates
   */
  public RateFilter filter() {
    return filter;
  }

  /**
   * Returns how far a new sample looks ahead: it comes out once so many frames after it went in.
   *
   * @return the look-ahead [frames of what goes in], ≥ 0
   */
  public int lookAheadFrames() {
    return filter.reachFrames();
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
   * Returns how much has to go in until so much has come out.
   *
   * @param outputFrames how many new frames are wanted
   * @return how many old ones it takes, the look-ahead included; 0 for none
   */
  public long inputFrames(long outputFrames) {
    return outputFrames == 0
        ? 0
        : Math.multiplyExact(outputFrames - 1, down) / up + 1 + lookAheadFrames();
  }

  /**
   * Starts a conversion.
   *
   * @param channelCount the number of channels, at least 1
   * @return the state, at the signal's start
   * @throws IllegalArgumentException if there is no channel
   */
  public RateConverter newConverter(int channelCount) {
    return new RateConverter(this, designRows(), channelCount);
  }

  /** New frames for each of {@link #down} old ones. */
  int up() {
    return up;
  }

  /** Old frames for each of {@link #up} new ones. */
  int down() {
    return down;
  }
}
