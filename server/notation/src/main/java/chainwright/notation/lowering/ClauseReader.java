package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Deliberate;
import chainwright.notation.model.Name;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.ReservedWords;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the clauses of a stage's line: its label, whether it is bypassed, what is deliberate. */
final class ClauseReader {

  private final List<Item> items;
  private final Report report;
  private final List<Deliberate> deliberates = new ArrayList<>();
  private Optional<Name> label = Optional.empty();
  private Optional<TextSpan> bypassed = Optional.empty();

  /** The latest label or `bypassed`, with the words that belong to it. */
  private Optional<TextSpan> mark = Optional.empty();

  private int next;

  ClauseReader(List<Item> items, Report report) {
    this.items = items;
    this.report = report;
  }

  static boolean isBegunBy(String word) {
    return ReservedWords.isTailMark(word);
  }

  /**
   * Reads a clause.
   *
   * @param word its first word
   * @param behind the index of the item behind that word
   * @return the index of the item behind the clause
   */
  int read(Item.Word word, int behind) {
    next = behind;
    switch (word.text()) {
      case "as" -> readLabel(word);
      case "bypassed" -> {
        bypassed = Optional.of(word.span());
        mark = bypassed;
      }
      default -> readDeliberate(word);
    }
    return next;
  }

  /** Returns what has been read, without notes. */
  Clauses read() {
    return new Clauses(label, bypassed, deliberates, List.of());
  }

  /** Returns a label or `bypassed` that a setting follows, once. */
  Optional<TextSpan> takeMisplaced() {
    Optional<TextSpan> misplaced = mark;
    mark = Optional.empty();
    return misplaced;
  }

  private void readDeliberate(Item.Word word) {
    Optional<Name> rule = nameAfter(word, "deliberate", "the name of a rule, then the reason");
    Optional<Item.Text> text = Optional.empty();
    if (next < items.size() && items.get(next) instanceof Item.Text found) {
      next++;
      text = Optional.of(found);
    }
    if (rule.isEmpty()) {
      return;
    }
    String reason = text.map(found -> found.text().strip()).orElse("");
    TextSpan span = word.span().union(text.map(Item.Text::span).orElse(rule.get().span()));
    if (reason.isEmpty()) {
      report.add(
          Fault.REASON_MISSING,
          text.map(Item.Text::span).orElse(span),
          "`deliberate " + rule.get().text() + "` gives no reason",
          "A rule is only silenced for a reason that the next reader can judge.",
          "Write the reason in quotes after the rule's name.");
    }
    deliberates.add(new Deliberate(rule.get(), reason, span));
  }

  private void readLabel(Item.Word word) {
    label = nameAfter(word, "as", "a name, such as `as bite`");
    label.ifPresent(name -> Kebab.check(name, report));
    mark = label.map(name -> word.span().union(name.span()));
  }

  private Optional<Name> nameAfter(Item.Word word, String keyword, String expected) {
    if (next < items.size() && items.get(next) instanceof Item.Word name) {
      next++;
      return Optional.of(new Name(name.text(), name.span()));
    }
    report.add(
        Fault.NAME_MISSING,
        word.span(),
        "after `" + keyword + "` comes " + expected,
        "",
        "Write it after `" + keyword + "`.");
    return Optional.empty();
  }
}
