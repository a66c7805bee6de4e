package chainwright.notation.lowering;

import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;

/**
 * The name of a path, a band or a device that lacks its {@code as} or its quotes.
 *
 * @param kind what the line begins with
 * @param statement the line
 * @param report where troubles go
 */
record BareName(StageKind kind, Statement statement, Report report) {

  private static final String INSERT = "insert";

  /**
   * Reports a word that can be such a name.
   *
   * @param word the word
   * @param known says which words are known on the line
   * @return whether it can be one
   */
  boolean report(Item.Word word, String known) {
    List<Item> items = statement.items();
    boolean isFirst = items.get(0) instanceof Item.Word first && first.span().equals(word.span());
    if (kind.family() != Family.STRUCTURE || !isFirst) {
      return false;
    }
    if (kind.word().equals(INSERT)) {
      reportTitle(items);
      return true;
    }
    report.add(
        Fault.UNKNOWN_SETTING,
        word.span(),
        "`" + kind.word() + "` knows no `" + word.text() + "`",
        "",
        "If it is the name, write `as " + word.text() + "`. " + known,
        fixes(word, items));
    return true;
  }

  /** A label stands behind the settings. */
  private List<Fix> fixes(Item.Word word, List<Item> items) {
    boolean isLabelled =
        items.stream().anyMatch(one -> one instanceof Item.Word other && other.text().equals("as"));
    if (isLabelled) {
      return List.of();
    }
    String label = "as " + word.text();
    int end = items.get(items.size() - 1).span().end();
    TextSpan start = new TextSpan(word.span().start(), word.span().start());
    return List.of(
        items.size() == 1
            ? report.change("Write `" + label + "`", true, new TextEdit(start, "as "))
            : report.change(
                "Write `" + label + "`",
                true,
                report.removal(word.span()),
                new TextEdit(new TextSpan(end, end), " " + label)));
  }

  /** The name of a device may be of several words. */
  private void reportTitle(List<Item> items) {
    TextSpan span = items.get(0).span();
    boolean isQuoted = false;
    boolean isOpen = true;
    for (Item item : items) {
      isQuoted |= item instanceof Item.Text;
      isOpen &=
          item instanceof Item.Word word
              && kind.setting(word.text()).isEmpty()
              && !ClauseReader.isBegunBy(word.text());
      span = isOpen ? span.union(item.span()) : span;
    }
    String quoted = "\"" + report.text(span) + "\"";
    report.add(
        Fault.TEXT_MISSING,
        span,
        "the name of the device stands in quotes",
        "",
        isQuoted ? "Write one name, in quotes." : "Write `" + quoted + "`.",
        isQuoted
            ? List.of()
            : List.of(report.change("Write `" + quoted + "`", true, new TextEdit(span, quoted))));
  }
}
