package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** A slope whose unit is written in several words: `18 dB oct`, `18 dB per octave`. */
final class SlopeWords {

  private SlopeWords() {}

  /**
   * Counts the words behind an amount that belong to the unit of a slope.
   *
   * @return 0 if there is no such unit
   */
  static int count(StageKind kind, Item.Amount amount, List<Item> items, int next) {
    // Asked of every amount of a file at its start: no lambdas, each of which is linked first.
    if (next >= items.size()
        || !(items.get(next) instanceof Item.Word first)
        || amount.unit().isEmpty()
        || Unit.parse(amount.unit().get()).orElse(null) != Unit.DECIBEL
        || slopes(kind).isEmpty()) {
      return 0;
    }
    if (isOctave(first)) {
      return 1;
    }
    boolean isSaid = first.text().equals("per") || first.text().equals("an");
    return isSaid && next + 1 < items.size() && isOctave(items.get(next + 1)) ? 2 : 0;
  }

  /** Reports a slope whose unit is written in several words. */
  static Unread report(StageKind kind, Item.Amount amount, Item octave, Report report) {
    TextSpan unit = amount.unitSpan().union(octave.span());
    String written = "Write `" + Unit.DB_PER_OCTAVE.symbol() + "`";
    report.add(
        Fault.UNKNOWN_UNIT,
        unit,
        "the unit of a slope is one word",
        "",
        written + ".",
        report.change(written, true, new TextEdit(unit, Unit.DB_PER_OCTAVE.symbol())));
    return new Unread(amount.span().union(octave.span()), slopes(kind));
  }

  private static boolean isOctave(Item item) {
    return item instanceof Item.Word word && Unit.parse(word.text()).orElse(null) == Unit.OCTAVE;
  }

  private static List<Setting> slopes(StageKind kind) {
    List<Setting> slopes = new ArrayList<>();
    for (Setting one : kind.settings()) {
      if (one.takes() instanceof Takes.InUnit takes && takes.unit() == Unit.DB_PER_OCTAVE) {
        slopes.add(one);
      }
    }
    return slopes;
  }
}
