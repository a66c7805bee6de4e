package chainwright.app.view;

import chainwright.app.plot.ValueRange;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Chooses the heights in which a chain is drawn whole: by the band that it lets through.
 *
 * <p>The skirts of high- and low-passes fall far below everything else. A picture that holds them
 * makes a cut of 2 dB a flat line, so they leave it below, with their −3 dB points still inside;
 * their own pictures show them down to the bottom. A chain that does nothing else is such a
 * picture.
 */
final class WorkingRange {

  /** Lower than every −3 dB point, and inside of the narrowest picture. */
  private static final double SKIRT_DB = 5.5;

  /** Less is no shape that anybody looks for. */
  private static final double FLAT_DB = 0.5;

  /** The share of a picture that a curve may fill. */
  private static final double FILLED = 0.98;

  private static final double[] ENDS_DB = {6, 12, 18, 24};
  private static final Set<String> PASS_FILTERS = Set.of("high-pass", "low-pass", "band-pass");

  private WorkingRange() {}

  /**
   * Chooses the heights of a picture.
   *
   * @param elements what is drawn
   * @param hertz the frequencies of the picture [Hz]
   * @return the ends [dB], as far above 0 as below; empty where the picture should hold all of the
   *     curve
   */
  static Optional<ValueRange> of(List<PathElement> elements, double[] hertz) {
    if (isPassFilterAlone(elements, hertz)) {
      return Optional.empty();
    }
    double[] decibels = SignalPath.product(elements).toDecibels(hertz);
    double highest = Double.NEGATIVE_INFINITY;
    for (double one : decibels) {
      highest = Math.max(highest, one);
    }
    double skirt = Math.min(0, highest) - SKIRT_DB;
    int first = 0;
    int last = decibels.length - 1;
    while (first < last && decibels[first] < skirt) {
      first++;
    }
    while (last > first && decibels[last] < skirt) {
      last--;
    }
    boolean isWhole = first == 0 && last == decibels.length - 1;
    double lowest = highest;
    for (int i = first; i <= last; i++) {
      lowest = Math.min(lowest, decibels[i]);
    }
    return isWhole ? Optional.empty() : ends(Math.max(highest, -lowest));
  }

  private static Optional<ValueRange> ends(double reachDb) {
    for (double end : ENDS_DB) {
      if (reachDb <= FILLED * end) {
        return Optional.of(new ValueRange(-end, end));
      }
    }
    return Optional.empty();
  }

  private static boolean isPassFilterAlone(List<PathElement> elements, double[] hertz) {
    Response others =
        SignalPath.product(
            elements.stream()
                .filter(
                    one ->
                        !(one instanceof StageElement stage && PASS_FILTERS.contains(stage.word())))
                .toList());
    for (double one : others.toDecibels(hertz)) {
      if (!(Math.abs(one) < FLAT_DB)) {
        return false;
      }
    }
    return true;
  }
}
