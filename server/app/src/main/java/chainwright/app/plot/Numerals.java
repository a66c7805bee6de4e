package chainwright.app.plot;

/** Writes the numbers of a plot, without the cost of a general formatter. */
final class Numerals {

  private static final char MINUS = '\u2212';
  private static final long[] POWERS = {1, 10, 100, 1000};
  private static final double LARGEST = 1e15;

  private Numerals() {}

  /** Returns a number for reading, rounded, without trailing zeros and with a true minus sign. */
  static String text(double value, int decimals) {
    if (Double.isNaN(value)) {
      return "–";
    }
    if (Math.abs(value) >= LARGEST) {
      return value < 0 ? MINUS + "∞" : "∞";
    }
    long scaled = Math.round(Math.abs(value) * POWERS[decimals]);
    StringBuilder out = new StringBuilder();
    if (value < 0 && scaled != 0) {
      out.append(MINUS);
    }
    appendScaled(out, scaled, decimals, true);
    return out.toString();
  }

  /** Returns a number with a plus sign where it is above zero. */
  static String signed(double value, int decimals) {
    String text = text(value, decimals);
    return value > 0 && !text.equals("0") ? "+" + text : text;
  }

  /** Returns a frequency as an engineer writes it, such as 82 Hz or 1.5 kHz. */
  static String hertz(double frequencyHz) {
    return frequencyHz < 1000
        ? text(frequencyHz, frequencyHz < 100 ? 1 : 0) + " Hz"
        : text(frequencyHz / 1000, 2) + " kHz";
  }

  /** Appends a coordinate given in tenths of a pixel; between 0 and 1 the 0 is left out. */
  static void appendTenths(StringBuilder out, int tenths) {
    if (tenths < 0) {
      out.append('-');
    }
    appendScaled(out, Math.abs((long) tenths), 1, false);
  }

  private static void appendScaled(
      StringBuilder out, long scaled, int decimals, boolean leadingZero) {
    long whole = scaled / POWERS[decimals];
    long part = scaled % POWERS[decimals];
    if (whole != 0 || leadingZero || part == 0) {
      out.append(whole);
    }
    if (part == 0) {
      return;
    }
    out.append('.');
    for (int place = decimals - 1; place >= 0 && part != 0; place--) {
      out.append((char) ('0' + part / POWERS[place]));
      part %= POWERS[place];
    }
  }
}
