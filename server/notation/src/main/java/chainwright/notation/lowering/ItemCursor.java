package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Name;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.Predicate;

/** Walks over what follows the first word of a declaration. */
final class ItemCursor {

  private final Statement statement;
  private final List<Item> items;
  private final Report report;
  private final AmountReader amounts;
  private final Predicate<String> beginsStatement;
  private int next;

  /** Walks over what stands where no other statement could follow on the line. */
  ItemCursor(Statement statement, Report report) {
    this(statement, report, word -> false);
  }

  /** Walks over a statement beside others, which a word that begins one may be meant for. */
  ItemCursor(Statement statement, Report report, Predicate<String> beginsStatement) {
    this.statement = statement;
    this.items = kept(statement.items());
    this.report = report;
    this.amounts = new AmountReader(report);
    this.beginsStatement = beginsStatement;
  }

  /** What the parser has reported already stands in nobody's way. */
  private static List<Item> kept(List<Item> items) {
    List<Item> kept = new ArrayList<>(items.size());
    for (Item item : items) {
      if (!(item instanceof Item.Mark mark) || mark.text().equals("=")) {
        kept.add(item);
      }
    }
    return kept;
  }

  String head() {
    return statement.head().map(Item.Word::text).orElse("");
  }

  /** The next word as a name; reports what is expected if there is none. */
  Optional<Name> name(String expected) {
    if (next < items.size() && items.get(next) instanceof Item.Word word) {
      next++;
      return Optional.of(new Name(word.text(), word.span()));
    }
    report.add(
        Fault.NAME_MISSING,
        statement.lineSpan(),
        "after `" + head() + "` comes " + expected,
        "",
        Vocabulary.find(head()).map(word -> "For example: `" + word.form() + "`.").orElse(""));
    next = items.size();
    return Optional.empty();
  }

  /**
   * The words that follow the one taken last, together with it; they are taken only if they are
   * wanted, joined by hyphens.
   */
  Optional<Name> joined(Predicate<String> isWanted) {
    Optional<JoinedWords> found = JoinedWords.at(items, next - 1, isWanted);
    found.ifPresent(words -> next += words.count() - 1);
    return found.map(words -> new Name(words.text(), words.span()));
  }

  /** What follows, if it is a text; it is not taken. */
  Optional<Item.Text> textAhead() {
    return next < items.size() && items.get(next) instanceof Item.Text text
        ? Optional.of(text)
        : Optional.empty();
  }

  /** The next word, if it is this one. */
  boolean takesWord(String text) {
    if (next < items.size()
        && items.get(next) instanceof Item.Word word
        && word.text().equals(text)) {
      next++;
      return true;
    }
    return false;
  }

  Optional<Item.Text> text(boolean isRequired) {
    if (next < items.size() && items.get(next) instanceof Item.Text text) {
      next++;
      return Optional.of(text);
    }
    if (isRequired) {
      reportNoText();
      next = items.size();
    }
    return Optional.empty();
  }

  private void reportNoText() {
    String what = "after `" + head() + "` comes a text in quotes";
    String remedy =
        Vocabulary.find(head()).map(word -> "For example: `" + word.form() + "`.").orElse("");
    if (next < items.size() && items.get(next) instanceof Item.Word word) {
      TextSpan bare = report.unbroken(word.span().start());
      String quoted = "\"" + report.text(bare) + "\"";
      report.add(
          Fault.TEXT_MISSING,
          word.span(),
          what,
          "",
          "Write `" + quoted + "`.",
          report.change("Write `" + quoted + "`", true, new TextEdit(bare, quoted)));
    } else {
      report.add(Fault.TEXT_MISSING, statement.lineSpan(), what, "", remedy);
    }
  }

  boolean isAtWord() {
    return next < items.size() && items.get(next) instanceof Item.Word;
  }

  boolean isAtAmount() {
    return next < items.size() && items.get(next) instanceof Item.Amount;
  }

  Optional<Item.Range> range() {
    if (next < items.size() && items.get(next) instanceof Item.Range range) {
      next++;
      return Optional.of(range);
    }
    return Optional.empty();
  }

  Optional<Quantity[]> range(Unit unit) {
    return range().flatMap(range -> amounts.read(range, unit, "`" + head() + "`"));
  }

  /** The next amount in a unit; reports what is expected if there is none. */
  Optional<Quantity> amount(Unit unit, String what) {
    return next < items.size() && items.get(next++) instanceof Item.Amount amount
        ? amounts.read(amount, unit, what)
        : noAmount(unit, what);
  }

  /** The next amount in a unit, of which some values only are possible [base unit]. */
  Optional<Quantity> amount(Unit unit, String what, DoublePredicate isPossible) {
    return next < items.size() && items.get(next++) instanceof Item.Amount amount
        ? amounts.read(amount, unit, what, isPossible)
        : noAmount(unit, what);
  }

  private Optional<Quantity> noAmount(Unit unit, String what) {
    report.add(
        Fault.VALUE_MISSING,
        statement.lineSpan(),
        what + " takes " + unit.dimension().description(),
        "",
        Vocabulary.find(head()).map(word -> "For example: `" + word.form() + "`.").orElse(""));
    next = items.size();
    return Optional.empty();
  }

  boolean takesMark(String text) {
    if (next < items.size()
        && items.get(next) instanceof Item.Mark mark
        && mark.text().equals(text)) {
      next++;
      return true;
    }
    return false;
  }

  /** Everything that follows; it is not taken. */
  List<Item> rest() {
    return items.subList(next, items.size());
  }

  /** Takes everything that follows, since it has been reported. */
  void skip() {
    next = items.size();
  }

  TextSpan lastSpan() {
    return next > 0 ? items.get(next - 1).span() : statement.lineSpan();
  }

  TextSpan lineSpan() {
    return statement.lineSpan();
  }

  /** Reports whatever is left, since nothing may be ignored silently. */
  void end() {
    if (next >= items.size()) {
      return;
    }
    TextSpan rest = items.get(next).span().union(items.get(items.size() - 1).span());
    if (items.get(next) instanceof Item.Word word && beginsStatement.test(word.text())) {
      report.add(
          Fault.SURPLUS_WORDS,
          rest,
          "`" + word.text() + "` stands on the line of `" + head() + "`",
          "A statement goes on to the end of its line.",
          "Begin a line of its own with it.",
          report.change("Begin a new line with `" + word.text() + "`", true, breaks()));
      return;
    }
    report.add(
        Fault.SURPLUS_WORDS,
        rest,
        "`" + head() + "` takes nothing more",
        "",
        Vocabulary.find(head())
            .map(word -> "It is written like this: `" + word.form() + "`.")
            .orElse("Remove it."));
  }

  /** A new line before each word left that begins a statement, up to the first stage. */
  private TextEdit[] breaks() {
    List<TextEdit> edits = new ArrayList<>();
    for (Item item : items.subList(next, items.size())) {
      if (item instanceof Item.Word word && beginsStatement.test(word.text())) {
        edits.add(report.lineBreak(statement.offset(), word.span().start()));
        if (Vocabulary.find(word.text()).isEmpty()) {
          break; // What follows may be a setting of it that is called like a stage.
        }
      }
    }
    return edits.toArray(TextEdit[]::new);
  }
}
