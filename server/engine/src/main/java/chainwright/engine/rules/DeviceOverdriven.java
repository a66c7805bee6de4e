package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.Level;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Peaks reach an analogue device above or close to its clip level.
 *
 * <p>Why: the device distorts on peaks.
 *
 * <p>At fault: {@code send +6 dBu into a device that clips at +20 dBu}. Not at fault: {@code send 0
 * dBu}.
 */
public final class DeviceOverdriven implements Rule {

  private static final double USUAL_CLIP_DBU = 20;
  private static final double CLIPPING_DB = 1;
  private static final double MARGIN_DB = 4;

  private static final RuleCard CARD =
      new RuleCard(
          "device-overdriven",
          Severity.WARNING,
          "An overdriven device",
          "The device distorts on peaks. Meters that show averages miss these peaks.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public DeviceOverdriven() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    Optional<Level> alignment = evidence.scope().alignment();
    if (alignment.isEmpty()) {
      return;
    }
    for (AnalogueInsert insert : AnalogueInsert.in(evidence)) {
      if (!insert.isRead("send", "return", "clip-level")) {
        continue;
      }
      double clipDbu = insert.insert().settings().number("clip-level").orElse(USUAL_CLIP_DBU);
      double peakDbu = insert.sendPeakDbu(alignment.get());
      boolean isClose = insert.declaredDbfs().isPresent() && peakDbu > clipDbu - MARGIN_DB;
      if (peakDbu > clipDbu - CLIPPING_DB) {
        report.accept(finding(evidence, insert, CARD.severity(), peakDbu, clipDbu));
      } else if (isClose) {
        report.accept(finding(evidence, insert, Severity.INFO, peakDbu, clipDbu));
      }
    }
  }

  private static Finding finding(
      Evidence evidence, AnalogueInsert insert, Severity severity, double peakDbu, double clipDbu) {
    double byDb = Math.ceil(peakDbu - clipDbu + MARGIN_DB);
    String send = Level.ofDbu(insert.sendDbu() - byDb).toString();
    String comeBack = Level.ofDbu(insert.returnDbu() - byDb).toString();
    return evidence.finding(
        CARD,
        severity,
        insert.at(insert.valueSpan("send")),
        insert.peakInWords()
            + " leaves at "
            + Figures.change(peakDbu)
            + "u, and the device clips at "
            + Figures.change(clipDbu)
            + "u",
        "Send " + Figures.amount(byDb) + " less and make it up on the return.",
        List.of(),
        List.of(
            Edits.changing(
                "Send " + send + ", return " + comeBack,
                true,
                List.of(insert.set("send", send), insert.set("return", comeBack)))));
  }
}
