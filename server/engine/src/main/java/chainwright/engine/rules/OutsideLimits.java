package chainwright.engine.rules;

import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Written;
import chainwright.quantity.Unit;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;

/**
 * A value lies beyond what its setting can mean.
 *
 * <p>Why: the stage cannot be built as written.
 *
 * <p>At fault: {@code bell 300 Hz -60 dB Q 1.4}. Not at fault: {@code bell 300 Hz -6 dB Q 1.4}.
 */
public final class OutsideLimits implements Rule {

  private static final double ROUNDING = 1e-9;

  private static final RuleCard CARD =
      new RuleCard(
          "outside-limits",
          Severity.ERROR,
          "A value that means nothing",
          "Beyond these limits the stage cannot be built, or does nothing of use:"
              + " most often a digit or the unit is another than was meant.",
          List.of("DESIGN"));

  /** Makes the rule, which has no state. */
  public OutsideLimits() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (Said said : Said.in(evidence.path())) {
      for (Written written : said.written()) {
        check(evidence, said, written, report);
      }
    }
  }

  private static void check(
      Evidence evidence, Said said, Written written, Consumer<Finding> report) {
    Setting setting = written.setting();
    double low = limit(setting.low(), said.settings(), Double.NEGATIVE_INFINITY);
    double high = limit(setting.high(), said.settings(), Double.POSITIVE_INFINITY);
    boolean isBeyond = false;
    for (double value : Amounts.of(written)) {
      isBeyond |= value < low - ROUNDING || value > high + ROUNDING;
    }
    if (isBeyond && low <= high) {
      String mended =
          Amounts.rewrite(
              written,
              slipped(written, low, high).orElse(value -> Math.min(high, Math.max(low, value))));
      report.accept(finding(evidence, said, written, limits(setting, low, high), mended));
    } else if (!isBeyond && !setting.offers().isEmpty() && !isOffered(written)) {
      String mended = Amounts.rewrite(written, value -> nearest(setting.offers(), value));
      report.accept(finding(evidence, said, written, ValueText.offers(setting), mended));
    }
  }

  /**
   * The slip of the hand by which one value came to lie outside: the sign of a size, or the sides
   * of a ratio in the other order. What is right but for it is likelier meant than a limit.
   */
  private static Optional<DoubleUnaryOperator> slipped(Written written, double low, double high) {
    List<Double> values = Amounts.of(written);
    if (values.size() != 1) {
      return Optional.empty();
    }
    double value = values.get(0);
    boolean isRatio =
        written.setting().takes() instanceof Takes.InUnit takes && takes.unit() == Unit.TO_ONE;
    boolean isSlip =
        isRatio ? value > 0 && value < 1 : (value < 0 && low >= 0) || (value > 0 && high <= 0);
    DoubleUnaryOperator undone = isRatio ? of -> 1 / of : of -> -of;
    double meant = undone.applyAsDouble(value);
    boolean isPossible =
        isSlip
            && meant >= low - ROUNDING
            && meant <= high + ROUNDING
            && isOffered(written.setting(), meant);
    return isPossible ? Optional.of(undone) : Optional.empty();
  }

  private static Finding finding(
      Evidence evidence, Said said, Written written, String limits, String mended) {
    Fix fix =
        Edits.changing(
            "Write `" + mended + "`",
            true,
            List.of(Edits.replaceValue(said.section(), written, mended)));
    return evidence.finding(
        CARD,
        said.at(written.valueSpan()),
        "`"
            + written.setting().name()
            + "` can be "
            + limits
            + ", but this is "
            + Amounts.spell(written),
        "Write " + mended + ", or what was meant.",
        List.of(),
        List.of(fix));
  }

  private static double limit(Limit limit, Settings settings, double none) {
    if (limit instanceof Limit.Fixed fixed) {
      return fixed.value();
    }
    if (limit instanceof Limit.OfSetting other) {
      return settings
          .written(other.name())
          .map(Amounts::of)
          .filter(values -> !values.isEmpty())
          .map(values -> values.get(0))
          .orElse(none);
    }
    return none;
  }

  private static String limits(Setting setting, double low, double high) {
    if (low == Double.NEGATIVE_INFINITY) {
      return "at most " + ValueText.of(setting, high);
    }
    return high == Double.POSITIVE_INFINITY
        ? ValueText.of(setting, low) + " or more"
        : ValueText.range(setting, low, high);
  }

  private static boolean isOffered(Written written) {
    for (double value : Amounts.of(written)) {
      if (!isOffered(written.setting(), value)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isOffered(Setting setting, double value) {
    return setting.offers().isEmpty()
        || Math.abs(nearest(setting.offers(), value) - value) < ROUNDING;
  }

  private static double nearest(List<Double> offers, double number) {
    double best = offers.get(0);
    for (double offer : offers) {
      best = Math.abs(offer - number) < Math.abs(best - number) ? offer : best;
    }
    return best;
  }
}
