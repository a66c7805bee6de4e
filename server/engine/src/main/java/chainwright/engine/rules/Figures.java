package chainwright.engine.rules;

import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import chainwright.quantity.QuantityRange;

/** Spells computed numbers for a sentence or an edit, rounded to what can be heard. */
public final class Figures {

  private static final double SIGNIFICANT = 100;

  private Figures() {}

  /**
   * Spells a frequency with three digits.
   *
   * @param hertz the frequency [Hz], 0 or more
   * @return such as "21.6 kHz"
   */
  public static String hertz(double hertz) {
    return rounded(hertz).toString();
  }

  /**
   * Spells a band of frequencies, each end with three digits.
   *
   * @param lowHz its lower end [Hz], 0 or more
   * @param highHz its upper end [Hz], 0 or more
   * @return such as "2.5 to 4.5 kHz"
   */
  public static String band(double lowHz, double highHz) {
    return new QuantityRange(rounded(lowHz), rounded(highHz)).toString();
  }

  private static Frequency rounded(double hertz) {
    if (hertz == 0) {
      return Frequency.ofHertz(0);
    }
    double step = Math.pow(10, Math.floor(Math.log10(hertz))) / SIGNIFICANT;
    return Frequency.ofHertz(Math.round(hertz / step) * step);
  }

  /**
   * Spells a change of level with its sign and one decimal.
   *
   * @param gainDb the change [dB]
   * @return such as "+2.5 dB"
   */
  public static String change(double gainDb) {
    return NumberText.formatSigned(gainDb, 1) + " dB";
  }

  /**
   * Spells an amount of decibels without a plus sign, with one decimal.
   *
   * @param amountDb the amount [dB]
   * @return such as "2.5 dB"
   */
  public static String amount(double amountDb) {
    return NumberText.format(amountDb, 1) + " dB";
  }

  /**
   * Spells a time in milliseconds with one decimal.
   *
   * @param seconds the time [s]
   * @return such as "6.1 ms"
   */
  public static String milliseconds(double seconds) {
    return NumberText.format(1000 * seconds, 1) + " ms";
  }

  /**
   * Spells a share in per cent with one decimal.
   *
   * @param share the share, 1 for the whole
   * @return such as "1.2 %"
   */
  public static String percent(double share) {
    return NumberText.format(100 * share, 1) + " %";
  }
}
