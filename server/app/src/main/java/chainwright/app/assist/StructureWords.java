package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.StructurePlots;
import chainwright.app.view.Unfinished;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.notation.model.Step;
import java.util.List;
import java.util.stream.Collectors;

/** Says in a few words what the ways through a structure are. */
final class StructureWords {

  private StructureWords() {}

  /** Says such as "dry + squashed" or "out at +4 dBu, back at +4 dBu". */
  static String of(SplitElement split) {
    if (!split.unread().isEmpty()) {
      return Unfinished.inWords(split);
    }
    if (split.step() instanceof Step.Insert insert) {
      return (insert.title().isEmpty() ? "" : insert.title() + ": ")
          + "out at "
          + Readings.analogueLevel(insert.settings().number("send").orElse(0.0))
          + ", back at "
          + Readings.analogueLevel(insert.settings().number("return").orElse(0.0));
    }
    if (split.step() instanceof Step.During during) {
      return "from "
          + Readings.clock(during.from().seconds())
          + " to "
          + Readings.clock(during.to().seconds());
    }
    List<String> names =
        split.branches().stream()
            .map(branch -> StructurePlots.name(branch.branch(), split))
            .toList();
    return names.stream().collect(Collectors.joining(" + "));
  }
}
