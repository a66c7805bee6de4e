package chainwright.engine.rules;

import chainwright.notation.catalogue.Limit;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Written;
import java.util.List;
import java.util.function.Consumer;

/**
 * A frequency lies at or above half the sample rate.
 *
 * <p>Why: no digital signal of this rate holds it.
 *
 * <p>At fault: {@code high-shelf 25 kHz +2 dB}. Not at fault: {@code high-shelf 16 kHz +2 dB}.
 */
public final class FrequencyAboveNyquist implements Rule {

  private static final double SAFE_SHARE = 0.45;

  private static final RuleCard CARD =
      new RuleCard(
          "frequency-above-nyquist",
          Severity.ERROR,
          "A frequency that the sample rate cannot hold",
          "It cannot exist at this rate. The filter would fold to another frequency or"
              + " become unstable.",
          List.of("CALC"));

  /** Makes the rule, which has no state. */
  public FrequencyAboveNyquist() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (Said said : Said.in(evidence.path())) {
      double rateHz = said.rate().hertz();
      for (Written written : said.written()) {
        if (written.setting().high() instanceof Limit.OfSampleRate limit
            && Amounts.most(written) >= limit.share() * rateHz) {
          report.accept(finding(evidence, said, written, rateHz));
        }
      }
    }
  }

  private static Finding finding(Evidence evidence, Said said, Written written, double rateHz) {
    double highestHz = SAFE_SHARE * rateHz;
    String mended = Amounts.rewrite(written, hertz -> Math.min(hertz, highestHz));
    Fix lower =
        Edits.changing(
            "Write `" + mended + "`",
            true,
            List.of(Edits.replaceValue(said.section(), written, mended)));
    return evidence.finding(
        CARD,
        said.at(written.valueSpan()),
        written.value()
            + " cannot exist at a sample rate of "
            + Figures.hertz(rateHz)
            + ", which holds frequencies below "
            + Figures.hertz(rateHz / 2),
        "Lower it to " + mended + " or less, or raise the `sample-rate`.",
        List.of(),
        List.of(lower));
  }
}
