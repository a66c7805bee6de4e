package chainwright.app.assist;

import chainwright.app.view.Nominal;
import chainwright.app.view.Readings;
import chainwright.app.view.StageWords;
import chainwright.app.view.StepWord;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import java.util.ArrayList;
import java.util.List;

/** Lists what happens on a way, a line each: the stages, and those inside structures set in. */
final class StageTables {

  static final List<String> HEAD = List.of("stage", "what it does", "latency");

  private static final String STEP_IN = "· ";

  private StageTables() {}

  static List<List<String>> rows(List<PathElement> elements, HoverGround ground) {
    List<List<String>> rows = new ArrayList<>();
    add(elements, "", ground, rows);
    return rows;
  }

  private static void add(
      List<PathElement> elements, String indent, HoverGround ground, List<List<String>> rows) {
    for (PathElement element : elements) {
      if (element instanceof StageElement stage) {
        rows.add(
            List.of(
                indent + stage.word(),
                stage.isBypassed() ? "bypassed" : StageWords.of(stage, ground.nominal()),
                latency(element, ground)));
      } else if (element instanceof SplitElement split) {
        rows.add(
            List.of(
                indent + StepWord.of(split.step()),
                split.isBypassed() ? "bypassed" : HoverPage.plain(StructureWords.of(split)),
                latency(element, ground)));
        for (PathElement.PathBranch branch : split.branches()) {
          add(branch.elements(), indent + STEP_IN, ground, rows);
        }
      }
    }
  }

  private static String latency(PathElement element, HoverGround ground) {
    double seconds = ground.latencySeconds(List.of(element));
    return seconds > 0 ? Readings.time(seconds) : "";
  }

  /** Says what elements do in one table cell. */
  static String inOneLine(List<PathElement> elements, Nominal nominal) {
    List<String> parts = new ArrayList<>();
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      parts.add(
          element instanceof StageElement stage
              ? stage.word() + " " + StageWords.of(stage, nominal)
              : StepWord.of(((SplitElement) element).step()));
    }
    return parts.isEmpty() ? "unchanged" : String.join("; ", parts);
  }
}
