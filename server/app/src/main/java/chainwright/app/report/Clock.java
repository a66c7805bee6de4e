package chainwright.app.report;

import java.util.Locale;

/** Times within recordings, as a player shows them. */
public final class Clock {

  private Clock() {}

  /**
   * Writes a time.
   *
   * @param seconds the time [s], ≥ 0
   * @return hours if there are any, minutes, seconds and thousandths, such as {@code 0:12.345}
   */
  public static String of(double seconds) {
    long thousandths = Math.round(seconds * 1000);
    long hours = thousandths / 3_600_000;
    long minutes = thousandths / 60_000 % 60;
    double rest = thousandths % 60_000 / 1000.0;
    return hours > 0
        ? String.format(Locale.ROOT, "%d:%02d:%06.3f", hours, minutes, rest)
        : String.format(Locale.ROOT, "%d:%06.3f", minutes, rest);
  }
}
