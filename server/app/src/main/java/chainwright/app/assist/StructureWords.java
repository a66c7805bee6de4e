package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.StructurePlots;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.notation.model.Step;
import java.util.List;
import java.util.stream.Collectors;

/** Names a structure, and says in a few words what its ways are. */
final class StructureWords {

  private StructureWords() {}

  static String name(Step step) {
    return step.accept(new Name());
  }

  /** Says such as "dry + squashed" or "out at +4 dBu, back at +4 dBu". */
  static String of(SplitElement split) {
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

  /** The word of each kind of step. */
  private record Name() implements Step.Visitor<String> {

    @Override
    public String visitStage(Step.Stage stage) {
      return stage.kind().word();
    }

    @Override
    public String visitApply(Step.Apply apply) {
      return "apply";
    }

    @Override
    public String visitInsert(Step.Insert insert) {
      return "insert";
    }

    @Override
    public String visitParallel(Step.Parallel parallel) {
      return "parallel";
    }

    @Override
    public String visitMidSide(Step.MidSide midSide) {
      return "mid-side";
    }

    @Override
    public String visitMultiband(Step.Multiband multiband) {
      return "multiband";
    }

    @Override
    public String visitDuring(Step.During during) {
      return "during";
    }
  }
}
