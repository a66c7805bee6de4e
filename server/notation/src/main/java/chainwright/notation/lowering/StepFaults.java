package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.diagnostic.Fix;
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
    if (keyword.isPresent()) {
      report.error(
          "misplaced-word",
          head.span(),
          "`" + head.text() + "` cannot stand here",
          keyword.get().says(),
          "It is written like this: `" + keyword.get().form() + "`.");
    } else if (isSettingAbove) {
      TextSpan start = new TextSpan(head.span().start(), head.span().start());
      report.error(
          "unknown-stage",
          head.span(),
          "`" + head.text() + "` is no stage, but a setting of the `" + above + "` above",
          "A statement ends with its line.",
          "Begin the line with `...` to continue the line above.",
          report.change("Continue the line above", true, new TextEdit(start, "... ")));
    } else if (second.isPresent()) {
      String mended = head.text() + "-" + second.get().text();
      report.error(
          "unknown-stage",
          head.span(),
          "`" + head.text() + "` is no stage",
          "",
          "Write `" + mended + "`, as one word.",
          report.change(
              "Write `" + mended + "`",
              true,
              new TextEdit(head.span().union(second.get().span()), mended)));
    } else {
      report.unknownWord(
          "unknown-stage",
          "`" + head.text() + "` is no stage",
          head.span(),
          head.text(),
          known(),
          "The groups of stages are " + families() + ".");
    }
  }

  private static String families() {
    List<String> words = new ArrayList<>();
    for (Family family : Family.values()) {
      if (family != Family.STRUCTURE) {
        words.add(family.name().toLowerCase(Locale.ROOT));
      }
    }
    String last = words.remove(words.size() - 1);
    return String.join(", ", words) + " and " + last;
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
    report.error(
        "misplaced-word",
        statement.lineSpan(),
        "here only `" + String.join("` or `", words) + "` can stand",
        "",
        "Put the line into a `" + part + " { … }`.",
        fixes);
  }
}
