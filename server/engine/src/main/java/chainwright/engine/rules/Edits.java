package chainwright.engine.rules;

import chainwright.notation.catalogue.Takes;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;

/** Writes the edits of fixes. Offsets count from the section's start. */
public final class Edits {

  private Edits() {}

  /**
   * Replaces the value of a setting. A Q that is written as a width in octaves becomes a Q.
   *
   * @param section the section it stands in
   * @param written the setting as written
   * @param value the new value, such as "12 dB/oct"
   * @return the edit
   */
  public static PlacedEdit replaceValue(Section section, Written written, String value) {
    boolean isWidth =
        written.setting().takes() instanceof Takes.Quality && written.nameSpan().isEmpty();
    String text = isWidth ? written.setting().name() + " " + value : value;
    return new PlacedEdit(section, new TextEdit(written.valueSpan(), text));
  }

  /**
   * Adds words at the end of a statement's line.
   *
   * @param section the section it stands in
   * @param lineSpan the line's span
   * @param words such as "slope 12 dB/oct"
   * @return the edit
   */
  public static PlacedEdit append(Section section, TextSpan lineSpan, String words) {
    return new PlacedEdit(
        section, new TextEdit(new TextSpan(lineSpan.end(), lineSpan.end()), "  " + words));
  }

  /**
   * Removes whole lines, from the start of the first to the end of the last.
   *
   * @param section the section they stand in
   * @param span a stretch that touches each of them
   * @return the edit
   */
  public static PlacedEdit removeLines(Section section, TextSpan span) {
    return new PlacedEdit(section, new TextEdit(wholeLines(section.text(), span), ""));
  }

  /**
   * Asks whether statements have their lines for themselves, so that these can be moved or removed:
   * no brace and no other statement stands beside them.
   *
   * @param section the section they stand in
   * @param span all of the statements
   * @return whether nothing but blanks stands before them and nothing but a comment behind them
   */
  public static boolean areAlone(Section section, TextSpan span) {
    TextSpan lines = wholeLines(section.text(), span);
    String before = section.text().substring(lines.start(), span.start());
    String behind = section.text().substring(span.end(), Math.max(span.end(), lines.end()));
    return before.isBlank() && (behind.isBlank() || behind.strip().startsWith("#"));
  }

  /**
   * Moves whole lines to stand right before another statement of the same section.
   *
   * @param section the section
   * @param moved a stretch that touches each line to be moved, with notes below it
   * @param before the statement that they shall stand before
   * @return two edits: the insertion and the removal
   */
  public static List<PlacedEdit> moveBefore(Section section, TextSpan moved, TextSpan before) {
    TextSpan lines = wholeLines(section.text(), moved);
    int target = lineStart(section.text(), before.start());
    String text = section.text().substring(lines.start(), lines.end());
    String whole = text.endsWith("\n") || text.endsWith("\r") ? text : text + "\n";
    return List.of(
        new PlacedEdit(section, new TextEdit(new TextSpan(target, target), whole)),
        new PlacedEdit(section, new TextEdit(lines, "")));
  }

  /**
   * Makes a fix that changes the sound.
   *
   * @param title what it does, as an order
   * @param isPreferred whether it is the usual choice
   * @param edits the edits
   * @return the fix
   */
  public static Fix changing(String title, boolean isPreferred, List<PlacedEdit> edits) {
    return new Fix(title, Fix.Effect.CHANGES_THE_SOUND, isPreferred, edits);
  }

  /** The lines that a span touches, with the last line's end. */
  private static TextSpan wholeLines(String text, TextSpan span) {
    int end = span.end();
    while (end < text.length() && text.charAt(end) != '\n') {
      end++;
    }
    return new TextSpan(lineStart(text, span.start()), Math.min(text.length(), end + 1));
  }

  private static int lineStart(String text, int offset) {
    int start = offset;
    while (start > 0 && text.charAt(start - 1) != '\n' && text.charAt(start - 1) != '\r') {
      start--;
    }
    return start;
  }
}
