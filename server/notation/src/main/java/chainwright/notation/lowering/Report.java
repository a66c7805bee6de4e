package chainwright.notation.lowering;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/** Collects what is wrong with one section while it is read. */
final class Report {

  private static final int ALL_AT_ONCE = 6;
  private static final int SOME = 3;

  private final Section section;
  private final boolean isTrial;
  private final List<Finding> findings = new ArrayList<>();

  Report(Section section) {
    this(section, section.troubles(), false);
  }

  private Report(Section section, List<Section.Trouble> said, boolean isTrial) {
    this.section = section;
    this.isTrial = isTrial;
    for (Section.Trouble trouble : said) {
      List<Fix> fixes = trouble.mend().isEmpty() ? List.of() : List.of(fix(trouble));
      add(trouble.fault(), trouble.span(), trouble.what(), "", trouble.remedy(), fixes);
    }
  }

  private Fix fix(Section.Trouble trouble) {
    TextEdit[] edits = trouble.mend().toArray(TextEdit[]::new);
    String title = describe(edits[0]) + (edits.length > 1 ? " and " + added(edits[1]) : "");
    return trouble.isUnread() ? change(title, true, edits) : fix(title, true, edits);
  }

  /** A report on the same section in which nothing stands yet, to try a reading. */
  Report trial() {
    return new Report(section, List.of(), true);
  }

  boolean isTrial() {
    return isTrial;
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  void add(Fault fault, TextSpan span, String what, String why, String remedy, Fix... fixes) {
    add(fault, span, what, why, remedy, List.of(fixes));
  }

  void add(Fault fault, TextSpan span, String what, String why, String remedy, List<Fix> fixes) {
    Place place = new Place(section, span);
    findings.add(Finding.ofText(fault, place, what, why, remedy, List.of(), fixes));
  }

  /** Reports a statement that says nothing without its block. */
  void noBlock(Statement statement, String word) {
    add(
        Fault.BLOCK_MISSING,
        statement.lineSpan(),
        "`" + word + "` has no block",
        "",
        "Write `{` at the end of this line and `}` after the last line that belongs to it.");
  }

  /** Reports a word that is not known, with the words that it may have meant. */
  void unknownWord(Fault fault, String what, TextSpan span, String word, Collection<String> known) {
    unknownWord(fault, what, span, word, known, knownHere(known));
  }

  /** Says what is known in a place. */
  static String knownHere(Collection<String> known) {
    return "Known here: " + few(known) + ".";
  }

  /** Reports a word that is not known, with what to look among if no known word is near. */
  void unknownWord(
      Fault fault,
      String what,
      TextSpan span,
      String word,
      Collection<String> known,
      String whereToLook) {
    unknownWord(fault, what, span, Nearest.to(word, known), whereToLook);
  }

  /** Reports words that are not known, with those that they may mean. */
  void unknownWord(Fault fault, String what, TextSpan span, List<String> near, String whereToLook) {
    String remedy =
        near.isEmpty() ? whereToLook : "Did you mean `" + String.join("` or `", near) + "`?";
    String end = text(span).endsWith("=") ? " " : "";
    List<Fix> fixes =
        near.stream()
            .map(
                one ->
                    change("Write `" + one + "`", near.size() == 1, new TextEdit(span, one + end)))
            .toList();
    add(fault, span, what, "", remedy, fixes);
  }

  /** Edits that only say better what was meant. */
  Fix fix(String title, boolean isPreferred, TextEdit... edits) {
    return new Fix(title, Fix.Effect.KEEPS_THE_SOUND, isPreferred, placed(edits));
  }

  /** An edit of a name where it is given; other lines may refer to it. */
  Fix rename(String title, TextEdit edit) {
    return new Fix(title, Fix.Effect.CHANGES_THE_SOUND, true, placed(edit));
  }

  /** Edits by which a line begins to mean something. */
  Fix change(String title, boolean isPreferred, TextEdit... edits) {
    return new Fix(title, Fix.Effect.GIVES_A_MEANING, isPreferred, placed(edits));
  }

  /** The words of the section that stand in a stretch. */
  String text(TextSpan span) {
    return section.text().substring(span.start(), span.end());
  }

  /** The stretch from an offset to the next blank or the line's end. */
  TextSpan unbroken(int start) {
    String text = section.text();
    int end = start;
    while (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    return new TextSpan(start, end);
  }

  /** A stretch of a line with the blanks on both sides. */
  TextSpan withBlanks(TextSpan span) {
    String text = section.text();
    int end = span.end();
    while (end < text.length()
        && Character.isWhitespace(text.charAt(end))
        && !isLineEnd(text.charAt(end))) {
      end++;
    }
    return new TextSpan(removal(span).span().start(), end);
  }

  /** The blanks before the first word of the line in which an offset lies. */
  String indent(int offset) {
    String text = section.text();
    int start = lineStart(offset);
    int end = start;
    while (end < offset && Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    return text.substring(start, end);
  }

  /** Begins a new line in a statement; it is indented further if it follows a brace on its line. */
  TextEdit lineBreak(int statement, int offset) {
    boolean isFirst = section.text().substring(lineStart(statement), statement).isBlank();
    TextSpan blanks = removal(new TextSpan(offset, offset)).span();
    return new TextEdit(blanks, "\n" + indent(statement) + (isFirst ? "" : "  "));
  }

  private int lineStart(int offset) {
    int start = offset;
    while (start > 0 && !isLineEnd(section.text().charAt(start - 1))) {
      start--;
    }
    return start;
  }

  /** Removes a stretch of a line with the blanks before it, and the line with it if that is all. */
  TextEdit removal(TextSpan span) {
    String text = section.text();
    int start = span.start();
    while (start > 0
        && Character.isWhitespace(text.charAt(start - 1))
        && !isLineEnd(text.charAt(start - 1))) {
      start--;
    }
    boolean isWholeLine =
        start > 0
            && isLineEnd(text.charAt(start - 1))
            && (span.end() == text.length() || isLineEnd(text.charAt(span.end())));
    if (isWholeLine) {
      start -= text.startsWith("\r\n", Math.max(0, start - 2)) ? 2 : 1;
    }
    return new TextEdit(new TextSpan(Math.max(0, start), span.end()), "");
  }

  /** Whether the parser has found fault with something that touches a stretch. */
  boolean isTroubled(TextSpan span) {
    for (Section.Trouble one : section.troubles()) {
      if (touches(one, span)) {
        return true;
      }
    }
    return false;
  }

  /** The stretches inside another one where a value stands that the parser could not read. */
  List<TextSpan> unreadIn(TextSpan stretch) {
    List<TextSpan> unread = new ArrayList<>();
    for (Section.Trouble trouble : section.troubles()) {
      boolean isInside =
          trouble.span().start() >= stretch.start() && trouble.span().end() <= stretch.end();
      if (trouble.isUnread() && isInside) {
        unread.add(trouble.span());
      }
    }
    return unread;
  }

  /** Whether this fault has been reported inside a stretch. */
  boolean isReported(Fault fault, TextSpan stretch) {
    return findings.stream()
        .anyMatch(one -> one.code().equals(fault.code()) && stretch.contains(one.place().span()));
  }

  /** Whether the parser has found this fault with something that touches a stretch. */
  boolean isFound(Fault fault, TextSpan span) {
    for (Section.Trouble one : section.troubles()) {
      if (one.fault() == fault && touches(one, span)) {
        return true;
      }
    }
    return false;
  }

  private static boolean touches(Section.Trouble one, TextSpan span) {
    return one.span().start() <= span.end() && span.start() <= one.span().end();
  }

  /** Whether an offset follows a mark of continuation that continues nothing. */
  boolean continuesNothing(int offset) {
    return section.troubles().stream()
        .filter(one -> one.fault() == Fault.CONTINUES_NOTHING && one.span().end() <= offset)
        .map(one -> section.text().substring(one.span().end(), offset))
        .anyMatch(between -> between.isBlank() && between.chars().noneMatch(Report::isLineEnd));
  }

  private static boolean isLineEnd(int character) {
    return character == '\n' || character == '\r';
  }

  private List<PlacedEdit> placed(TextEdit... edits) {
    return Stream.of(edits).map(edit -> new PlacedEdit(section, edit)).toList();
  }

  /** Says what an edit will do to the text. */
  private String describe(TextEdit edit) {
    String before = text(edit.span());
    String after = edit.newText();
    if (before.contains("\n") && !after.isBlank() && before.strip().equals(after.strip())) {
      return "Move `" + after.strip() + "` to the line above";
    }
    if (after.isEmpty()) {
      return before.isBlank() ? "Remove the blank" : "Remove `" + before.strip() + "`";
    }
    if (after.startsWith("\n")) {
      String first = after.isBlank() ? wordBehind(edit) : after.strip();
      return "Begin a new line with `" + first + "`";
    }
    if (after.isBlank()) {
      return "Put a blank between `" + wordBefore(edit) + "` and `" + wordBehind(edit) + "`";
    }
    return edit.span().length() == 0
        ? "Add " + added(edit)
        : "Write `" + after.strip() + "` instead of `" + before.strip() + "`";
  }

  private static String added(TextEdit edit) {
    return "`" + edit.newText().strip() + "`";
  }

  private String wordBefore(TextEdit edit) {
    String text = section.text();
    int start = edit.span().start();
    while (start > 0 && !Character.isWhitespace(text.charAt(start - 1))) {
      start--;
    }
    return text.substring(start, edit.span().start());
  }

  private String wordBehind(TextEdit edit) {
    return text(unbroken(edit.span().end()));
  }

  /** All words if they are few, else the first ones. */
  private static String few(Collection<String> known) {
    if (known.size() <= ALL_AT_ONCE) {
      return String.join(", ", known);
    }
    String first = String.join(", ", known.stream().limit(SOME).toList());
    return first + " and " + (known.size() - SOME) + " more";
  }
}
