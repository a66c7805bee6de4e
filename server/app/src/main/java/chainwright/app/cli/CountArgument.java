package chainwright.app.cli;

import java.util.regex.Pattern;

/** Reads how many of something there shall be. */
final class CountArgument implements Argument<Integer> {

  private static final Pattern COUNT = Pattern.compile("0*[1-9]\\d{0,2}");

  @Override
  public String expected() {
    return "a whole number from 1 to 999";
  }

  @Override
  public Integer convert(String text) {
    if (!COUNT.matcher(text).matches()) {
      throw refusal();
    }
    return Integer.valueOf(text);
  }
}
