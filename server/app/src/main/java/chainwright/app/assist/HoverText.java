package chainwright.app.assist;

import chainwright.app.plot.Plot;
import chainwright.notation.text.TextSpan;
import java.util.List;

/**
 * What is shown about a stretch of a text.
 *
 * @param markdown the text, in Markdown; its first line is the answer
 * @param span the stretch, from the section's start
 * @param plots what is drawn in the text, in its order
 */
public record HoverText(String markdown, TextSpan span, List<Plot> plots) {

  /**
   * Copies the plots.
   *
   * @param markdown the text
   * @param span the stretch
   * @param plots what is drawn in it
   */
  public HoverText {
    plots = List.copyOf(plots);
  }

  /** Returns the first paragraph as plain text, without the marks of Markdown. */
  String answer() {
    int end = markdown.indexOf("\n\n");
    return HoverPage.unmarked(end < 0 ? markdown.strip() : markdown.substring(0, end));
  }
}
