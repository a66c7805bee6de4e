package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import java.util.ArrayList;
import java.util.List;

/** The gain reduction that the author expects, where it is written. */
final class Reductions {

  private static final String EXPECTED = "expected-reduction";
  private static final String DE_ESSER = "de-ess";

  private Reductions() {}

  /** Returns the stages that say how much they turn the whole spectrum down, in order. */
  static List<StageElement> expected(SignalPath path) {
    List<StageElement> expected = new ArrayList<>();
    for (StageElement stage : path.stages()) {
      if (!stage.isPartial()
          && !stage.word().equals(DE_ESSER)
          && stage.stage().settings().written(EXPECTED).isPresent()) {
        expected.add(stage);
      }
    }
    return expected;
  }

  /** Returns the expected reduction [dB]. */
  static double ofDb(StageElement element) {
    return element.stage().settings().number(EXPECTED).orElse(0.0);
  }

  /** Returns the sum, as if all came at once [dB]. */
  static double sumDb(List<StageElement> stages) {
    return stages.stream().mapToDouble(Reductions::ofDb).sum();
  }
}
