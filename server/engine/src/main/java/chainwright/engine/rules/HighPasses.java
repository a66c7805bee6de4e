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

  /** Filters whose cutoffs lie nearer to one another work as one at the higher cutoff. */
  private static final double OCTAVE = 2;

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

  /** What they take at a frequency at most [dB], told without designing them. */
  static double mostLossDb(List<StageElement> filters, double hertz) {
    double sumDb = 0;
    for (StageElement one : filters) {
      sumDb -= one.sound().orElseThrow().response().estimateAt(hertz).leastDb();
    }
    return sumDb;
  }

  static double cutoffHz(StageElement filter) {
    return filter.context().number("cutoff");
  }

  static double slopeDbPerOctave(StageElement filter) {
    return filter.context().number("slope");
  }

  static double highestCutoffHz(List<StageElement> filters) {
    double highestHz = 0;
    for (StageElement one : filters) {
      highestHz = Math.max(highestHz, cutoffHz(one));
    }
    return highestHz;
  }

  /**
   * Those that add their slopes at the highest cutoff: a safety filter far below does not make the
   * corner steeper.
   */
  static List<StageElement> atHighestCutoff(List<StageElement> filters) {
    double highestHz = highestCutoffHz(filters);
    return filters.stream().filter(one -> cutoffHz(one) * OCTAVE >= highestHz).toList();
  }

  /** The slope of several in a row far below their cutoffs [dB/oct]. */
  static double slopeDbPerOctave(List<StageElement> filters) {
    return filters.stream().mapToDouble(HighPasses::slopeDbPerOctave).sum();
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
