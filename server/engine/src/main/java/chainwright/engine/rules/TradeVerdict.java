package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Written;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A written value that lies outside the trade's range.
 *
 * @param said the settings it belongs to
 * @param written the value
 * @param range the range
 * @param direction whether it holds for a cut or for a boost only
 */
record TradeVerdict(Said said, Written written, TradeRange range, RangeRow.Direction direction) {

  /** Settings whose far ends have rules of their own, which know more of the case. */
  private static final Set<String> ELSEWHERE = Set.of("oversampling", "blend");

  /**
   * Returns the values of a path with this verdict. Those of bypassed stages are left out, of side
   * chains, which nobody hears, and of dynamics on a copy beside the untouched sound, which may be
   * worked as hard as one likes.
   */
  static List<TradeVerdict> in(Evidence evidence, TradeRange.Verdict verdict) {
    List<TradeVerdict> found = new ArrayList<>();
    for (Said said : Said.in(evidence.path())) {
      if (said.isBypassed() || said.part() != Said.Part.WHOLE) {
        continue;
      }
      RangeRow.Direction direction = said.settings().direction();
      for (Written written : said.written()) {
        Optional<RangeRow> row = written.setting().row(evidence.path().source(), direction);
        boolean isFound =
            row.isPresent()
                && isSettled(said.settings(), row.get())
                && worst(written, row.get().range()) == verdict
                && said.settings().isInEffect(written.setting())
                && !ELSEWHERE.contains(written.setting().name())
                && !isSpokenOfElsewhere(written, evidence);
        if (isFound) {
          found.add(new TradeVerdict(said, written, row.get().range(), row.get().direction()));
        }
      }
    }
    return found;
  }

  /** Whether the range stays, however what could not be read on the line is mended. */
  private static boolean isSettled(Settings settings, RangeRow row) {
    return row.direction() == RangeRow.Direction.ANY || settings.isDirectionKnown();
  }

  private static TradeRange.Verdict worst(Written written, TradeRange range) {
    TradeRange.Verdict worst = TradeRange.Verdict.USUAL;
    for (double value : Amounts.of(written)) {
      TradeRange.Verdict one = range.verdict(value);
      worst = one.compareTo(worst) > 0 ? one : worst;
    }
    return worst;
  }

  @SuppressWarnings("ReferenceEquality") // This value, not another that is written alike.
  private static boolean isAmong(List<Written> all, Written written) {
    for (Written one : all) {
      if (one == written) {
        return true;
      }
    }
    return false;
  }

  /** Whether a rule with a better reason already speaks of a value. */
  private static boolean isSpokenOfElsewhere(Written written, Evidence evidence) {
    for (StageElement element : evidence.path().stages()) {
      if (isAmong(element.stage().settings().written(), written)) {
        return switch (written.setting().name()) {
          case "Q" -> NarrowBoost.isAtFault(element);
          case "gain" -> WideDeepCut.isAtFault(element);
          case "centre", "cutoff" -> BoostBeyondHearing.isAtFault(element);
          case "slope" -> OverSteepSlope.isAtFault(element);
          default -> false;
        };
      }
    }
    return false;
  }

  Place place() {
    return said.at(written.valueSpan());
  }

  /** Names the setting and its value. */
  String named() {
    return Amounts.named(written);
  }

  /** Spells the usual range: "usual for a cut is 0.5 to 6". */
  String usual() {
    return "usual"
        + direction.inWords()
        + " is "
        + ValueText.range(written.setting(), range.usualLow(), range.usualHigh());
  }

  /** Spells the nearest usual value. */
  String nearest() {
    return Amounts.rewrite(
        written, value -> Math.min(range.usualHigh(), Math.max(range.usualLow(), value)));
  }

  List<String> sources() {
    return range.sources().stream().map(Citation::spelt).toList();
  }

  /** The words by which the range is explained, such as "compressor ratio". */
  String topic() {
    return said.settings().kind().word() + " " + written.setting().name();
  }

  List<Fix> fixes() {
    return List.of(
        Edits.changing(
            "Write `" + nearest() + "`",
            true,
            List.of(Edits.replaceValue(said.section(), written, nearest()))));
  }
}
