package chainwright.app.cli;

import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A part of a take.
 *
 * @param fromFrame its first frame
 * @param toFrame the frame after its last; empty for the end of the take
 */
record RenderPart(long fromFrame, OptionalLong toFrame) {

  static RenderPart of(OptionalDouble start, OptionalDouble toSeconds, long frames, SampleRate rate)
      throws IOException {
    double fromSeconds = start.orElse(0);
    long from = Math.round(fromSeconds * rate.hertz());
    OptionalLong to =
        toSeconds.isPresent()
            ? OptionalLong.of(Math.round(toSeconds.getAsDouble() * rate.hertz()))
            : OptionalLong.empty();
    if (from > to.orElse(frames) || to.orElse(frames) > frames) {
      throw new IOException(
          String.format(
              Locale.ROOT,
              "the part must lie within the take, which is %.3f s long, but is from %.3f s to %.3f s",
              frames / rate.hertz(),
              fromSeconds,
              toSeconds.orElse(frames / rate.hertz())));
    }
    return new RenderPart(from, to);
  }
}
