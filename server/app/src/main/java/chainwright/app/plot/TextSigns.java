package chainwright.app.plot;

import java.util.List;

/**
 * The characters a text plot is made of, in Unicode or in ASCII.
 *
 * @param asciiOnly whether only ASCII may be used
 * @param upright the vertical axis
 * @param level the horizontal axis
 * @param corner where they meet
 * @param tickLeft a tick of the vertical axis
 * @param tickBelow a tick of the horizontal axis
 * @param baseline the line that means "nothing done"
 * @param unity the diagonal that means "output = input"
 * @param guide a vertical line with a name
 * @param mark a point with a word
 */
record TextSigns(
    boolean asciiOnly,
    String upright,
    String level,
    String corner,
    String tickLeft,
    String tickBelow,
    String baseline,
    String unity,
    String guide,
    String mark) {

  private static final TextSigns UNICODE =
      new TextSigns(false, "│", "─", "└", "┤", "┴", "┄", "·", "┊", "●");
  private static final TextSigns ASCII =
      new TextSigns(true, "|", "-", "+", "+", "+", "-", ".", ":", "@");
  private static final String EIGHTHS = " ▁▂▃▄▅▆▇█";

  static TextSigns of(boolean asciiOnly) {
    return asciiOnly ? ASCII : UNICODE;
  }

  List<String> cells(String text) {
    return CellText.cells(text, asciiOnly);
  }

  List<String> fitted(String text, int width) {
    return CellText.fitted(text, width, asciiOnly);
  }

  /** Returns a name drawn out to a width between two ends, or the bare name if it is longer. */
  String bracket(String name, int width) {
    int spare = width - cells(name).size();
    if (spare < 2) {
      return name;
    }
    String line = asciiOnly ? "-" : "─";
    boolean spaced = spare >= 6;
    String words = spaced ? " " + name + " " : name;
    int dashes = spare - 2 - (spaced ? 2 : 0);
    return (asciiOnly ? "[" : "├")
        + line.repeat(dashes / 2)
        + words
        + line.repeat(dashes - dashes / 2)
        + (asciiOnly ? "]" : "┤");
  }

  /** Returns three cells of a solid bar, filled from below by so many eighths. */
  String solid(int eighths) {
    return (asciiOnly ? (eighths < 4 ? "_" : "#") : EIGHTHS.substring(eighths, eighths + 1))
        .repeat(3);
  }

  /** Returns the sign of a numbered branch, one cell wide. */
  String number(int number) {
    return number <= 9 ? Integer.toString(number) : Character.toString('a' + (number - 10) % 26);
  }

  String hollowSides() {
    return asciiOnly ? "| |" : "│ │";
  }

  String hollowTop() {
    return asciiOnly ? ".-." : "┌─┐";
  }

  /** Returns the letter of a curve where there are no dots. */
  String letter(CurveRole role) {
    return switch (role) {
      case STAGE -> "*";
      case CHAIN_SO_FAR -> "o";
      case COMPARISON -> ".";
      case RETURN -> "%";
      case BRANCH -> "=";
    };
  }
}
