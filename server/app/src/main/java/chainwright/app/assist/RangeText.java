package chainwright.app.assist;

import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Says of a value how usual it is, for which source, and where that is known from.
 *
 * @param stage the word of the stage that takes the setting
 * @param setting the setting
 * @param source the kind of source, if it is declared
 * @param direction the sign of the stage's gain
 */
record RangeText(
    String stage, Setting setting, Optional<SourceKind> source, RangeRow.Direction direction) {

  Proposal proposal(String text, double value) {
    Optional<RangeRow> row = setting.row(source, direction);
    boolean isDefault =
        setting.byOmission() instanceof Default.Amount amount && amount.value() == value;
    String detail =
        setting.name()
            + row.map(
                    one ->
                        ", "
                            + verdict(one.range(), value)
                            + " "
                            + forWhom(one)
                            + one.direction().inWords())
                .orElse("")
            + (isDefault ? "; the default" : "");
    List<String> paragraphs = new ArrayList<>();
    paragraphs.add(setting.says());
    row.ifPresent(one -> paragraphs.addAll(range(one)));
    return Proposal.of(text, Proposal.Kind.VALUE, detail, paragraphs.toArray(new String[0]));
  }

  /** The range in words, then where it comes from. */
  List<String> range(RangeRow row) {
    TradeRange range = row.range();
    StringBuilder text = new StringBuilder();
    text.append(capital(forWhom(row)))
        .append(row.direction().inWords())
        .append(": usual ")
        .append(ValueText.range(setting, range.usualLow(), range.usualHigh()))
        .append(", cautious ")
        .append(ValueText.range(setting, range.cautiousLow(), range.cautiousHigh()));
    range
        .extremeBelow()
        .ifPresent(low -> text.append(", extreme at or below ").append(ValueText.of(setting, low)));
    range
        .extremeAbove()
        .ifPresent(
            high -> text.append(", extreme at or above ").append(ValueText.of(setting, high)));
    text.append('.');
    if (!range.note().isEmpty()) {
      text.append(' ').append(capital(range.note())).append('.');
    }
    String sources =
        Cited.briefly(
            range.sources().stream().map(Citation::spelt).distinct().toList(),
            stage + " " + setting.name());
    return List.of(text.toString(), "Source of the range: " + sources + ".");
  }

  private static String verdict(TradeRange range, double value) {
    boolean isOffered = range.offered().isPresent() && range.offered().getAsDouble() == value;
    boolean isCautious = value >= range.cautiousLow() && value <= range.cautiousHigh();
    return switch (range.verdict(value)) {
      case USUAL -> isCautious && !isOffered ? "cautious" : "usual";
      case UNCOMMON -> "uncommon";
      case EXTREME -> "extreme";
    };
  }

  /** Whom a range was given for: the declared source, one that it is like, or any. */
  private String forWhom(RangeRow row) {
    if (row.sources().isEmpty()) {
      return "for any source";
    }
    String title = source.map(SourceKind::inWords).orElse("");
    boolean isOwn = source.filter(kind -> row.sources().contains(kind.word())).isPresent();
    return isOwn
        ? "for " + title
        : "for " + title + ", taken from " + source.flatMap(SourceKind::like).orElse("another");
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
