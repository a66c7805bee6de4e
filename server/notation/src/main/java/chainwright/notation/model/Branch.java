package chainwright.notation.model;

import chainwright.notation.text.TextSpan;
import java.util.List;

/**
 * One of the ways through a structure: a path, a band, the middle or the side, or the only way.
 *
 * @param word the word that opens it: "path", "band", "mid", "side", or the structure's own word
 * @param title its title, or empty text
 * @param settings its settings, such as a path's gain
 * @param steps what happens on it, in order
 * @param clauses what else is said of it
 * @param lineSpan its first line, without its block
 * @param span all of it
 */
public record Branch(
    String word,
    String title,
    Settings settings,
    List<Step> steps,
    Clauses clauses,
    TextSpan lineSpan,
    TextSpan span) {

  /**
   * Copies the steps.
   *
   * @param word the word
   * @param title its title
   * @param settings its settings
   * @param steps what happens on it
   * @param clauses what else is said
   * @param lineSpan its first line
   * @param span all of it
   */
  public Branch {
    steps = List.copyOf(steps);
  }
}
