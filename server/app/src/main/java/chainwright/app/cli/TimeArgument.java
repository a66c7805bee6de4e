package chainwright.app.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a time in a recording as the notation writes it, in seconds. */
final class TimeArgument implements Argument<Double> {

  private static final Pattern CLOCK =
      Pattern.compile("(?:(\\d{1,4}):)?(\\d{1,4}):(\\d{1,2}(?:\\.\\d+)?)");

  private static final Pattern SECONDS = Pattern.compile("(\\d+(?:\\.\\d+)?|\\.\\d+) ?(ms|s)");

  @Override
  public String expected() {
    return "a time in the recording, such as `0:31.2`, `1:02:03.5` or `31.2s`";
  }

  @Override
  public Double convert(String text) {
    Matcher clock = CLOCK.matcher(text);
    if (clock.matches()) {
      double hours = clock.group(1) == null ? 0 : Integer.parseInt(clock.group(1));
      double minutes = Integer.parseInt(clock.group(2));
      double seconds = Double.parseDouble(clock.group(3));
      if (seconds < 60 && (clock.group(1) == null || minutes < 60)) {
        return (hours * 60 + minutes) * 60 + seconds;
      }
    }
    Matcher plain = SECONDS.matcher(text);
    if (plain.matches()) {
      return Double.parseDouble(plain.group(1)) * (plain.group(2).equals("ms") ? 0.001 : 1);
    }
    throw refusal();
  }
}
