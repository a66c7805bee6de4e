package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Words what is wrong with a line that is no step where it stands.
 *
 * @param catalogue the vocabulary
 * @param report where troubles go
 */
record StepFaults(Catalogue catalogue, Report report) {

  private static final String FILTER = "-filter";
  private static final String WHERE_LISTED =
      "All stages: completion at the start of a line, or `chainwright explain` on the command line.";

  /** Reports a line whose first word is no stage. */
  void unknown(Statement statement, Item.Word head, String above) {
    Optional<Vocabulary.Keyword> keyword = Vocabulary.find(head.text());
    boolean isSettingAbove =
        catalogue.stage(above).flatMap(kind -> kind.setting(head.text())).isPresent();
    if (report.continuesNothing(head.span().start())) {
      return;
    }
    Optional<JoinedWords> joined = joined(statement, head);
    if (joined.isPresent()) {
      reportJoined(joined.get());
    } else if (head.text().equals("mid") || head.text().equals("side")) {
      outsideMidSide(statement, head);
    } else if (keyword.isPresent()) {
      report.add(
          Fault.MISPLACED_WORD,
          head.span(),
          "`" + head.text() + "` cannot stand here",
          keyword.get().says(),
          "It is written like this: `" + keyword.get().form() + "`.");
    } else if (isSettingAbove) {
      TextSpan start = new TextSpan(head.span().start(), head.span().start());
      report.add(
          Fault.UNKNOWN_STAGE,
          head.span(),
          "`" + head.text() + "` is no stage, but a setting of the `" + above + "` above",
          "A statement ends with its line.",
          "Begin the line with `...` to continue the line above.",
          report.change("Continue the line above", true, new TextEdit(start, "... ")));
    } else if (!reportGlued(statement, head) && !reportBeforeStage(statement, head)) {
      unknownWord(head.span(), head.text(), TradeWords.writtenFor(head.text()));
    }
  }

  /** The words with which a line begins, if they are one word with hyphens. */
  private Optional<JoinedWords> joined(Statement statement, Item.Word head) {
    List<Item> items = new ArrayList<>(statement.items());
    items.add(0, head);
    return JoinedWords.at(items, 0, one -> !meant(one).isEmpty());
  }

  /** Whether a line begins with the words of a declaration, not joined. */
  boolean isMeantAsDeclaration(Statement statement) {
    return statement
        .head()
        .flatMap(head -> joined(statement, head))
        .filter(words -> DeclarationReader.isDeclaration(words.text()))
        .isPresent();
  }

  /** What is written for a word that begins a line, or is said for one that does. */
  private List<String> meant(String word) {
    if (isKnown(word)) {
      return List.of(word);
    }
    List<String> said = TradeWords.writtenFor(word);
    return said.isEmpty() && word.endsWith(FILTER)
        ? meant(word.substring(0, word.length() - FILTER.length()))
        : said;
  }

  private boolean isKnown(String word) {
    return StepReader.isStep(word, catalogue) || DeclarationReader.isDeclaration(word);
  }

  private void reportJoined(JoinedWords words) {
    if (!isKnown(words.text())) {
      unknownWord(words.span(), report.text(words.span()), meant(words.text()));
      return;
    }
    String mended = "Write `" + words.text() + "`";
    report.add(
        Fault.UNKNOWN_STAGE,
        words.span(),
        "`" + report.text(words.span()) + "` is no stage",
        "",
        mended + ", as one word.",
        report.change(mended, true, new TextEdit(words.span(), words.text())));
  }

  /** Reports a stage to which its value is glued. */
  private boolean reportGlued(Statement statement, Item.Word head) {
    Optional<GluedNumber> found = GluedNumber.in(head.text(), one -> !meant(one).isEmpty());
    boolean isLabel =
        found.filter(one -> one.number().chars().allMatch(Character::isDigit)).isPresent()
            && statement.items().stream()
                .findFirst()
                .filter(Item.Amount.class::isInstance)
                .isPresent();
    if (found.isEmpty() || isLabel || report.isFound(Fault.MISSING_BLANK, head.span())) {
      return found.isPresent() && !isLabel;
    }
    report.unknownWord(
        Fault.UNKNOWN_STAGE,
        "`" + head.text() + "` is no stage",
        head.span(),
        meant(found.get().word()).stream().map(one -> one + " " + found.get().number()).toList(),
        WHERE_LISTED);
    return true;
  }

  /**
   * Reports a word before a stage, such as {@code tape saturation}: what is written for it alone
   * would make two stages of one.
   */
  private boolean reportBeforeStage(Statement statement, Item.Word head) {
    String word = head.text().toLowerCase(Locale.ROOT);
    Optional<Item.Word> second =
        statement.items().stream()
            .findFirst()
            .filter(Item.Word.class::isInstance)
            .map(Item.Word.class::cast);
    String stage = second.map(one -> one.text().toLowerCase(Locale.ROOT)).orElse("");
    List<String> said = TradeWords.writtenFor(word);
    List<String> near = said.isEmpty() ? Nearest.to(word, known()) : said;
    boolean takesSecond = near.stream().anyMatch(one -> canTake(one, stage));
    if (!StepReader.isStep(stage, catalogue) || takesSecond) {
      return false;
    }
    TextSpan span = head.span().union(second.orElseThrow().span());
    boolean isSetting =
        catalogue.stage(stage).flatMap(kind -> kind.settingOfWord(word)).isPresent();
    if (isSetting || said.contains(stage)) {
      unknownWord(span, report.text(span), List.of(isSetting ? stage + " " + word : stage));
      return true;
    }
    report.add(
        Fault.UNKNOWN_STAGE,
        head.span(),
        "`" + head.text() + "` before `" + second.orElseThrow().text() + "` is no stage",
        "",
        "Begin the line with `" + stage + "`, and say the rest by its settings or in a note.");
    return true;
  }

  /** Whether a word begins what names a bus or a source, or has a setting of this name. */
  private boolean canTake(String word, String second) {
    return DeclarationReader.isDeclaration(word)
        || word.equals("apply")
        || catalogue.stage(word).flatMap(kind -> kind.setting(second)).isPresent();
  }

  private void unknownWord(TextSpan span, String written, List<String> meant) {
    String what = "`" + written + "` is no stage";
    if (meant.isEmpty()) {
      report.unknownWord(Fault.UNKNOWN_STAGE, what, span, written, known(), WHERE_LISTED);
      return;
    }
    boolean isOne = meant.size() == 1;
    report.add(
        Fault.UNKNOWN_STAGE,
        span,
        what + (isOne ? ", but is said for one" : ", but is said for several"),
        isOne ? "" : "Here each of them has a word of its own.",
        isOne
            ? "Write `" + meant.get(0) + "`."
            : "Write `" + String.join("`, `", meant) + "`, whichever is meant. " + WHERE_LISTED,
        meant.stream()
            .map(one -> report.change("Write `" + one + "`", isOne, new TextEdit(span, one)))
            .toList());
  }

  /**
   * Reports a part of `mid-side` that stands alone; its brothers may stand in blocks of their own.
   */
  private void outsideMidSide(Statement statement, Item.Word head) {
    TextSpan start = new TextSpan(statement.offset(), statement.offset());
    TextSpan end = new TextSpan(statement.span().end(), statement.span().end());
    boolean isWhole = statement.block().isPresent();
    report.add(
        Fault.MISPLACED_WORD,
        head.span(),
        "`" + head.text() + "` stands outside of a `mid-side`",
        "Only there the channels are taken apart into their middle and their side.",
        "Put it into a block: `mid-side { " + head.text() + " { … } }`.",
        isWhole
            ? List.of(
                report.change(
                    "Put it into a `mid-side`",
                    true,
                    new TextEdit(start, "mid-side { "),
                    new TextEdit(end, " }")))
            : List.of());
  }

  private List<String> known() {
    List<String> known = new ArrayList<>();
    catalogue.stages().forEach(stage -> known.add(stage.word()));
    Vocabulary.all().stream()
        .filter(
            one ->
                one.place() == Vocabulary.Place.DECLARATION
                    || one.place() == Vocabulary.Place.STRUCTURE)
        .forEach(one -> known.add(one.text()));
    return known;
  }

  /** Reports a line that stands where only the parts of a structure can stand. */
  void outside(Statement statement, List<String> words) {
    String part = words.get(0);
    TextSpan start = new TextSpan(statement.offset(), statement.offset());
    TextSpan end = new TextSpan(statement.span().end(), statement.span().end());
    boolean isStage =
        statement.head().flatMap(head -> catalogue.stage(head.text())).isPresent()
            && !part.equals("band");
    List<Fix> fixes =
        isStage
            ? List.of(
                report.change(
                    "Put it into a `" + part + "`",
                    true,
                    new TextEdit(start, part + " { "),
                    new TextEdit(end, " }")))
            : List.of();
    report.add(
        Fault.MISPLACED_WORD,
        statement.lineSpan(),
        "here only `" + String.join("` or `", words) + "` can stand",
        "",
        "Put the line into a `" + part + " { … }`.",
        fixes);
  }
}
