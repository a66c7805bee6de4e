package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Frequency;
import java.util.List;
import java.util.Optional;

/**
 * A note where a stage takes a frequency.
 *
 * @param kind what the line begins with
 * @param report where troubles go
 */
record NoteFault(StageKind kind, Report report) {

  /** A tenth of a hertz is finer than any filter is set. */
  private static final double TENTHS = 10;

  /**
   * Reports a word, if it is the name of a note.
   *
   * @return what could not be read; empty if the word is no note or no frequency stands here
   */
  Optional<Unread> report(Item.Word word) {
    TextSpan whole = report.unbroken(word.span().start());
    boolean isSharp = NoteName.flat(report.text(whole)).isPresent();
    TextSpan span = isSharp ? whole : word.span();
    Optional<Frequency> frequency = NoteName.frequency(report.text(span));
    List<Setting> settings =
        kind.settings().stream()
            .filter(one -> one.isPositional() && one.takes() instanceof Takes.InUnit)
            .filter(
                one -> SettingFaults.dimension(one).filter(Dimension.FREQUENCY::equals).isPresent())
            .filter(one -> one.takes() instanceof Takes.InUnit takes && !takes.isSpan())
            .toList();
    if (frequency.isEmpty() || settings.isEmpty()) {
      return Optional.empty();
    }
    double hertz = Math.rint(frequency.get().hertz() * TENTHS) / TENTHS;
    String mended = AmountReader.spell(hertz) + " Hz";
    report.add(
        Fault.UNKNOWN_SETTING,
        word.span(),
        "`" + kind.word() + "` takes a frequency, not the note `" + report.text(span) + "`",
        isSharp ? "`#` begins a comment, so nothing from there on was read." : "",
        "Write `" + mended + "`.",
        report.change("Write `" + mended + "`", true, new TextEdit(span, mended)));
    return Optional.of(new Unread(word.span(), isSharp ? kind.settings() : settings));
  }
}
