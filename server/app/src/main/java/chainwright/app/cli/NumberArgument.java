package chainwright.app.cli;

import java.util.regex.Pattern;

/** Reads a number without a unit. */
final class NumberArgument implements Argument<Double> {

  private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d{1,9}(?:\\.\\d*)?|\\.\\d+)");

  @Override
  public String expected() {
    return "a number without a unit, such as `80` or `-18.5`";
  }

  @Override
  public Double convert(String text) {
    // Copied from what the program shows, a minus may be the typographic one.
    String plain = text.strip().replace('\u2212', '-');
    if (!NUMBER.matcher(plain).matches()) {
      throw refusal();
    }
    return Double.parseDouble(plain);
  }
}
