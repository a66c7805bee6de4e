package chainwright.app.render;

import chainwright.dsp.signal.RateConversion;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.engine.sound.RateLeg;
import chainwright.quantity.SampleRate;
import java.nio.file.Path;
import java.util.List;

/**
 * Where what goes into each bus is to be written, and how.
 *
 * @param folder the folder to be made
 * @param from the sample rate of the takes
 * @param to the sample rate of the files
 */
public record StemOrder(Path folder, SampleRate from, SampleRate to) {

  /** The change of the sample rate, with nothing behind it; none where both are the same. */
  List<RateLeg> legs() {
    return from.equals(to)
        ? List.of()
        : List.of(new RateLeg(RateConversion.design(from, to), new SeriesDesign(List.of())));
  }

  /** The first frame of a file at or after a frame of the takes. */
  long deliveredFrames(long frames) {
    return legs().isEmpty() ? frames : legs().get(0).conversion().outputFrames(frames);
  }

  /** How many frames of the takes it takes for so many of a file. */
  long neededFrames(long delivered) {
    return legs().isEmpty() ? delivered : legs().get(0).conversion().inputFrames(delivered);
  }
}
