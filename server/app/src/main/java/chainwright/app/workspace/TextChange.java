package chainwright.app.workspace;

import java.util.Optional;

/**
 * One change as an editor reports it.
 *
 * @param range what was replaced; empty when the text is the whole document
 * @param text what stands there now
 */
public record TextChange(Optional<Range> range, String text) {

  /**
   * A stretch between two places.
   *
   * @param start where it begins
   * @param end where it ends
   */
  public record Range(TextPosition start, TextPosition end) {}

  /**
   * Makes the change that replaces everything.
   *
   * @param text the whole new text
   * @return the change
   */
  public static TextChange ofWhole(String text) {
    return new TextChange(Optional.empty(), text);
  }

  /**
   * Makes the change that replaces a stretch.
   *
   * @param start where the stretch begins
   * @param end where it ends
   * @param text what stands there now
   * @return the change
   */
  public static TextChange of(TextPosition start, TextPosition end, String text) {
    return new TextChange(Optional.of(new Range(start, end)), text);
  }
}
