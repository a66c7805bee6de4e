package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import java.util.ArrayList;
import java.util.List;

/** What the rules about high-passes share: the filters on the main line, and what they take. */
final class HighPasses {

  private HighPasses() {}

  /** The high-passes that the whole signal passes and that can be designed, in order. */
  static List<StageElement> of(SignalPath path) {
    List<StageElement> filters = new ArrayList<>();
    for (StageElement one : path.stages()) {
      if (one.word().equals("high-pass") && !one.isPartial() && one.sound().isPresent()) {
        filters.add(one);
      }
    }
    return filters;
  }

  static Response response(List<StageElement> filters) {
    return new ResponseProduct(
        filters.stream().flatMap(one -> one.sound().stream()).map(StageSound::response).toList());
  }

  /** How much they take at a frequency [dB], more than 0 for a loss. */
  static double lossDb(List<StageElement> filters, double hertz) {
    return filters.isEmpty() ? 0 : 0 - response(filters).decibelsAt(hertz);
  }

  static double cutoffHz(StageElement filter) {
    return filter.context().number("cutoff");
  }

  static double slopeDbPerOctave(StageElement filter) {
    return filter.context().number("slope");
  }

  /** The one that takes most at a frequency. */
  static StageElement strongest(List<StageElement> filters, double hertz) {
    StageElement strongest = filters.get(0);
    for (StageElement one : filters) {
      if (lossDb(List.of(one), hertz) > lossDb(List.of(strongest), hertz)) {
        strongest = one;
      }
    }
    return strongest;
  }

  @SuppressWarnings("ReferenceEquality") // This filter, not another that is written alike.
  static List<StageElement> without(List<StageElement> filters, StageElement one) {
    return filters.stream().filter(filter -> filter != one).toList();
  }
}
