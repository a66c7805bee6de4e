package chainwright.app.cli;

import chainwright.app.audiofile.AudioFormat;
import chainwright.quantity.SampleRate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a sample rate as the notation writes it, in whole hertz; the unit may be left out. */
final class RateArgument implements Argument<SampleRate> {

  private static final Pattern RATE = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,3})?) ?(kHz|Hz)?");

  @Override
  public String expected() {
    return "whole hertz from 8000 to 384000, such as `48000` or `44.1kHz`";
  }

  @Override
  public SampleRate convert(String text) {
    Matcher matcher = RATE.matcher(text);
    if (matcher.matches()) {
      boolean isKilohertz = "kHz".equals(matcher.group(2));
      double hertz = Double.parseDouble(matcher.group(1)) * (isKilohertz ? 1000 : 1);
      double whole = Math.rint(hertz);
      boolean isRate =
          Math.abs(hertz - whole) < 1e-6
              && whole >= AudioFormat.LOWEST_RATE_HZ
              && whole <= AudioFormat.HIGHEST_RATE_HZ;
      if (isRate) {
        return SampleRate.ofHertz(whole);
      }
    }
    throw refusal();
  }
}
