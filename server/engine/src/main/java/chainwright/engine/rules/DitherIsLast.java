package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Something stands behind the dither.
 *
 * <p>Why: dither is fitted to the last rounding.
 *
 * <p>At fault: {@code dither 16 bit}, then {@code gain -0.3 dB}; a dithered chain that goes to a
 * bus with stages. Not at fault: dither as the last stage of the last bus.
 */
public final class DitherIsLast implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "dither-is-last",
          Severity.ERROR,
          "Something behind the dither",
          "Dither is fitted to the last rounding. Anything after it rounds again without"
              + " protection.",
          List.of("DITH", "KATZ"));

  /** Makes the rule, which has no state. */
  public DitherIsLast() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> stages = evidence.path().placed();
    for (int i = 0; i < stages.size(); i++) {
      if (!stages.get(i).word().equals("dither")) {
        continue;
      }
      Optional<SignalPath> bus =
          evidence.busesAfter().stream().filter(one -> !one.placed().isEmpty()).findFirst();
      if (bus.isPresent()) {
        report.accept(beforeBus(evidence, stages.get(i), bus.get().track().name().text()));
      } else if (i + 1 < stages.size()) {
        report.accept(beforeStage(evidence, stages.get(i), stages.subList(i + 1, stages.size())));
      }
    }
  }

  private static Finding beforeStage(
      Evidence evidence, StageElement dither, List<StageElement> after) {
    StageElement last = after.get(after.size() - 1);
    String count =
        after.size() == 1 ? "`" + last.word() + "` stands" : after.size() + " stages stand";
    List<Fix> fixes =
        last.word().equals("dither")
            ? StageOrder.remove(evidence, "Remove this `dither`", dither)
            : StageOrder.moveBehind(evidence, "Move `dither` to the end", dither, last);
    return evidence.finding(
        CARD,
        StageOrder.at(dither),
        count
            + " behind the dither to "
            + dither
                .context()
                .settings()
                .value("word-length")
                .map(Object::toString)
                .orElse("a shorter word"),
        "Move the `dither` line to the end.",
        List.of(StageOrder.related(last, "rounds again")),
        fixes);
  }

  private static Finding beforeBus(Evidence evidence, StageElement dither, String bus) {
    return evidence.finding(
        CARD,
        StageOrder.at(dither),
        "The bus `" + bus + "` works on what is dithered here",
        "Dither once, as the last stage of the last bus.",
        List.of(),
        StageOrder.remove(evidence, "Remove this `dither`", dither));
  }
}
