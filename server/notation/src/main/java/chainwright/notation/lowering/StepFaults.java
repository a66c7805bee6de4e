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
import java.util.Optional;

/**
 * Words what is wrong with a line that is no step where it stands.
 *
 * @param catalogue the vocabulary
 * @param report where troubles go
 */
record StepFaults(Catalogue catalogue, Report report) {

  private static final String WHERE_LISTED =
      "All stages: completion at the start of a line, or `chainwright explain` on the command line.";

  /** Reports a line whose first word is no stage. */
  void unknown(Statement statement, Item.Word head, String above) {
    Optional<Vocabulary.Keyword> keyword = Vocabulary.find(head.text());
    boolean isSettingAbove =
        catalogue.stage(above).flatMap(kind -> kind.setting(head.text())).isPresent();
    Optional<Item.Word> second =
        statement.items().stream()
            .findFirst()
            .filter(Item.Word.class::isInstance)
            .map(Item.Word.class::cast)
            .filter(word -> catalogue.stage(head.text() + "-" + word.text()).isPresent());
    if (report.continuesNothing(head.span().start())) {
      return;
    }
    if (head.text().equals("mid") || head.text().equals("side")) {
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
    } else if (second.isPresent()) {
      String mended = head.text() + "-" + second.get().text();
      report.add(
          Fault.UNKNOWN_STAGE,
          head.span(),
          "`" + head.text() + "` is no stage",
          "",
          "Write `" + mended + "`, as one word.",
          report.change(
              "Write `" + mended + "`",
              true,
              new TextEdit(head.span().union(second.get().span()), mended)));
    } else {
      unknownWord(head);
    }
  }

  private void unknownWord(Item.Word head) {
    List<String> meant = TradeWords.writtenFor(head.text());
    String what = "`" + head.text() + "` is no stage";
    if (meant.isEmpty()) {
      report.unknownWord(
          Fault.UNKNOWN_STAGE, what, head.span(), head.text(), known(), WHERE_LISTED);
      return;
    }
    boolean isOne = meant.size() == 1;
    report.add(
        Fault.UNKNOWN_STAGE,
        head.span(),
        what + (isOne ? ", but is said for one" : ", but is said for several"),
        isOne ? "" : "Here each of them has a word of its own.",
        isOne
            ? "Write `" + meant.get(0) + "`."
            : "Write `" + String.join("`, `", meant) + "`, whichever is meant. " + WHERE_LISTED,
        meant.stream()
            .map(one -> report.change("Write `" + one + "`", isOne, new TextEdit(head.span(), one)))
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
