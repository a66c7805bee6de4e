package chainwright.app.page;

import chainwright.app.plot.CellText;
import java.util.ArrayList;
import java.util.List;

/** Breaks prose into lines between its words. */
public final class Wrapping {

  private Wrapping() {}

  /**
   * Breaks a text into lines.
   *
   * @param text prose; a line break counts as a blank
   * @param cells how many cells of a terminal a line may take; a word that is longer stands alone
   * @return the lines, one or more
   */
  public static List<String> lines(String text, int cells) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int taken = 0;
    for (String word : text.strip().split("\\s+", -1)) {
      int width = CellText.width(word);
      if (!line.isEmpty() && taken + 1 + width > cells) {
        lines.add(line.toString());
        line.setLength(0);
        taken = 0;
      }
      taken += width + (line.isEmpty() ? 0 : 1);
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
