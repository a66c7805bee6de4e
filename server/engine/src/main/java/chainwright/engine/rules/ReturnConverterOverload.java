package chainwright.engine.rules;

import chainwright.dsp.filter.ResponseSearch;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.Level;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What comes back from an insert passes full scale of the converter.
 *
 * <p>Why: input converters clip hard and unseen.
 *
 * <p>At fault: {@code a device that adds 6 dB, returned without a pad}. Not at fault: {@code return
 * +6 dBu}.
 */
public final class ReturnConverterOverload implements Rule {

  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;

  private static final RuleCard CARD =
      new RuleCard(
          "return-converter-overload",
          Severity.ERROR,
          "An overloaded return converter",
          "Input converters clip hard and unseen. The device in between may still sound"
              + " clean, so the ear looks in the wrong place.",
          List.of("R68", "CP"));

  /** Makes the rule, which has no state. */
  public ReturnConverterOverload() {}

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
      double fullScaleDbu = insert.returnDbu() - alignment.get().decibels();
      double peakDbu = returnPeakDbu(evidence, insert, alignment.get());
      if (peakDbu > fullScaleDbu) {
        report.accept(finding(evidence, insert, peakDbu, fullScaleDbu));
      }
    }
  }

  /**
   * The send peak, raised by what the stages that model the device raise most, or its clip level.
   */
  private static double returnPeakDbu(Evidence evidence, AnalogueInsert insert, Level alignment) {
    double nyquistHz = evidence.path().rate().nyquist().hertz();
    double gainDb =
        ResponseSearch.findHighest(insert.model(), LOWEST_HZ, Math.min(HIGHEST_HZ, nyquistHz))
            .decibels();
    double peakDbu = insert.sendPeakDbu(alignment) + gainDb;
    return insert
        .insert()
        .settings()
        .number("clip-level")
        .map(clip -> Math.min(clip, peakDbu))
        .orElse(peakDbu);
  }

  private static Finding finding(
      Evidence evidence, AnalogueInsert insert, double peakDbu, double fullScaleDbu) {
    double byDb = Math.ceil(peakDbu - fullScaleDbu);
    String pad = Level.ofDbu(insert.returnDbu() + byDb).toString();
    boolean isDeclared = insert.declaredDbfs().isPresent();
    return evidence.finding(
        CARD,
        isDeclared ? CARD.severity() : Severity.WARNING,
        insert.at(insert.valueSpan("return")),
        insert.peakInWords()
            + " comes back at "
            + Figures.change(peakDbu)
            + "u, and the converter is full at "
            + Figures.change(fullScaleDbu)
            + "u",
        "Turn the return down by "
            + Figures.amount(byDb)
            + " before the converter, and up after it.",
        List.of(),
        List.of(Edits.changing("Return " + pad, true, List.of(insert.set("return", pad)))));
  }
}
