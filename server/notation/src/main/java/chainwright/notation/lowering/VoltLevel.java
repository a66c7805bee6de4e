package chainwright.notation.lowering;

import chainwright.notation.catalogue.StageKind;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * A level against one volt, which the notation writes against 0.7746 V.
 *
 * <p>Source of the formula: the definitions of both units (from memory): 0 dBV is 1 V; 0 dBu is the
 * voltage of 1 mW in 600 ohms, the root of 0.6 V. So a level in dBu is higher by 20 lg(1/0.774597),
 * which is 2.218 dB.
 *
 * @param amount the level as written
 * @param unitSpan where its unit stands
 */
record VoltLevel(Item.Amount amount, TextSpan unitSpan) {

  private static final double DBU_OF_A_VOLT = 20 * Math.log10(1 / Math.sqrt(0.6));

  private static final double HUNDREDTHS = 100;

  /** Whether a word is the unit of such levels. */
  static boolean isIn(String unit) {
    return unit.equalsIgnoreCase("dBV");
  }

  /** Whether a stage takes analogue levels at all. */
  static boolean isTakenBy(StageKind kind) {
    return kind.settings().stream()
        .map(SettingFaults::dimension)
        .anyMatch(one -> one.equals(Optional.of(Dimension.ANALOGUE_LEVEL)));
  }

  /** Reports the unit, and offers the same level against 0.7746 V. */
  void report(Report report) {
    Optional<String> mended =
        AmountReader.parse(amount.number())
            .map(level -> Math.rint((level + DBU_OF_A_VOLT) * HUNDREDTHS) / HUNDREDTHS)
            .filter(Double::isFinite)
            .map(level -> AmountReader.spell(level) + " " + Unit.DBU.symbol());
    report.add(
        Fault.UNKNOWN_UNIT,
        unitSpan,
        "analogue levels are written in dBu, not dBV",
        "0 dBV is 1 V, and 0 dBu is 0.7746 V, of 1 mW in 600 ohms: in dBu a level is higher by"
            + " 20 lg(1/0.7746), which is 2.22 dB.",
        mended.map(one -> "Write `" + one + "`.").orElse("Write it in dBu."),
        mended
            .map(
                one ->
                    List.of(
                        report.change(
                            "Write `" + one + "`",
                            true,
                            new TextEdit(amount.span().union(unitSpan), one))))
            .orElse(List.of()));
  }
}
