package chainwright.app.view;

import chainwright.engine.rules.Figures;
import chainwright.notation.lowering.NoteName;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;

/** Spells what was computed as it is read out: a real minus sign, and no more digits than count. */
public final class Readings {

  private static final double DIGITS = 100;

  private Readings() {}

  /**
   * Spells a gain with one decimal.
   *
   * @param gainDb the gain [dB]; may be infinite
   * @return such as "−3.0 dB", "+2.0 dB" or "0.0 dB"
   */
  public static String gain(double gainDb) {
    if (!Double.isFinite(gainDb)) {
      return gainDb < 0 ? "nothing passes" : "unbounded";
    }
    String size = String.valueOf(Math.round(Math.abs(gainDb) * 10) / 10.0);
    boolean isZero = size.equals("0.0");
    return (isZero ? "" : gainDb < 0 ? "−" : "+") + size + " dB";
  }

  /**
   * Spells a gain at a frequency.
   *
   * @param gainDb the gain [dB]
   * @param hertz the frequency [Hz]
   * @return such as "−3.0 dB at 66 Hz"
   */
  public static String gainAt(double gainDb, double hertz) {
    return gain(gainDb) + " at " + frequency(hertz);
  }

  /**
   * Spells a gain at a frequency that is written in the text.
   *
   * @param gainDb the gain [dB]
   * @param frequency the frequency, spelt with all its digits
   * @return such as "−3.0 dB at 66 Hz"
   */
  public static String gainAt(double gainDb, Frequency frequency) {
    return gain(gainDb) + " at " + frequency;
  }

  /**
   * Spells a frequency with three digits.
   *
   * @param hertz the frequency [Hz], above 0
   * @return such as "21.6 kHz"
   */
  public static String frequency(double hertz) {
    return Figures.hertz(hertz);
  }

  /**
   * Spells a band of frequencies, each end with three digits.
   *
   * @param lowHz its lower end [Hz], 0 or more
   * @param highHz its upper end [Hz], above 0
   * @return such as "2.5 to 4.5 kHz"
   */
  public static String band(double lowHz, double highHz) {
    return Figures.band(lowHz, highHz);
  }

  /**
   * Spells a frequency with the note nearest to it.
   *
   * @param hertz the frequency [Hz], above 0
   * @return such as "82.4 Hz (E2)"
   */
  public static String pitch(double hertz) {
    return frequency(hertz) + " (" + NoteName.nearest(hertz) + ")";
  }

  /**
   * Spells a number with a real minus sign.
   *
   * @param value the number, finite
   * @param decimals the most decimals, 0 or more
   * @return such as "−18"
   */
  public static String number(double value, int decimals) {
    return NumberText.format(value, decimals).replace('-', '−');
  }

  /**
   * Spells a digital level.
   *
   * @param levelDbfs the level [dBFS]
   * @return such as "−18 dBFS"
   */
  public static String level(double levelDbfs) {
    return number(levelDbfs, 1) + " dBFS";
  }

  /**
   * Spells an analogue level.
   *
   * @param levelDbu the level [dBu]
   * @return such as "+4 dBu"
   */
  public static String analogueLevel(double levelDbu) {
    return NumberText.formatSigned(levelDbu, 1).replace('-', '−') + " dBu";
  }

  /**
   * Spells a time with three digits, in the unit that suits its size.
   *
   * @param seconds the time [s], 0 or more
   * @return such as "577 ms", "1.6 ms" or "2.4 s"
   */
  public static String time(double seconds) {
    if (seconds == 0) {
      return "0 ms";
    }
    double step = Math.pow(10, Math.floor(Math.log10(seconds))) / DIGITS;
    double rounded = Math.round(seconds / step) * step;
    return rounded >= 1
        ? number(rounded, 2) + " s"
        : rounded >= 0.001 ? number(rounded * 1000, 2) + " ms" : number(rounded * 1e6, 1) + " us";
  }

  /**
   * Spells a place in a recording.
   *
   * @param seconds the place [s], 0 or more
   * @return such as "0:31.2"
   */
  public static String clock(double seconds) {
    double rounded = Math.round(seconds * 1000) / 1000.0;
    long minutes = (long) (rounded / 60);
    double rest = Math.round((rounded - minutes * 60) * 1000) / 1000.0;
    return minutes + ":" + (rest < 10 ? "0" : "") + NumberText.format(rest, 3);
  }
}
