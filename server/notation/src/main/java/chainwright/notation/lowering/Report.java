package chainwright.notation.lowering;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Collects what is wrong with one section while it is read. */
final class Report {

  private final Section section;
  private final List<Finding> findings = new ArrayList<>();

  Report(Section section) {
    this.section = section;
    for (Section.Trouble trouble : section.troubles()) {
      List<Fix> fixes =
          trouble
              .mend()
              .map(edit -> List.of(fix("Mend: " + describe(edit), true, edit)))
              .orElse(List.of());
      error(trouble.code(), trouble.span(), trouble.what(), "", trouble.remedy(), fixes);
    }
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  void error(String code, TextSpan span, String what, String why, String remedy, Fix... fixes) {
    error(code, span, what, why, remedy, List.of(fixes));
  }

  void error(String code, TextSpan span, String what, String why, String remedy, List<Fix> fixes) {
    findings.add(
        Finding.ofText(code, Severity.ERROR, new Place(section, span), what, why, remedy, fixes));
  }

  void warning(String code, TextSpan span, String what, String why, String remedy, Fix... fixes) {
    findings.add(
        Finding.ofText(
            code, Severity.WARNING, new Place(section, span), what, why, remedy, List.of(fixes)));
  }

  /** Reports a word that is not known, with the words that it may have meant. */
  void unknownWord(String code, String what, TextSpan span, String word, Collection<String> known) {
    List<String> near = Nearest.to(word, known);
    String remedy =
        near.isEmpty()
            ? "Known here: " + String.join(", ", first(known)) + "."
            : "Did you mean `" + String.join("` or `", near) + "`?";
    List<Fix> fixes = new ArrayList<>();
    for (String candidate : near) {
      fixes.add(
          new Fix(
              "Write `" + candidate + "`",
              Fix.Effect.CHANGES_THE_SOUND,
              near.size() == 1,
              List.of(new PlacedEdit(section, new TextEdit(span, candidate)))));
    }
    error(code, span, what, "", remedy, fixes);
  }

  /** An edit that only says better what was meant. */
  Fix fix(String title, boolean isPreferred, TextEdit edit) {
    return new Fix(
        title, Fix.Effect.KEEPS_THE_SOUND, isPreferred, List.of(new PlacedEdit(section, edit)));
  }

  /** An edit by which a line begins to mean something. */
  Fix change(String title, boolean isPreferred, TextEdit edit) {
    return new Fix(
        title, Fix.Effect.CHANGES_THE_SOUND, isPreferred, List.of(new PlacedEdit(section, edit)));
  }

  private static String describe(TextEdit edit) {
    if (edit.newText().isEmpty()) {
      return "remove it";
    }
    String text = edit.newText().strip();
    return edit.span().length() == 0 ? "add `" + text + "`" : "write `" + text + "`";
  }

  private static List<String> first(Collection<String> known) {
    return known.stream().limit(8).toList();
  }
}
