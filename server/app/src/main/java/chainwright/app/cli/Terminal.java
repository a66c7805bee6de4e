package chainwright.app.cli;

import java.util.Map;
import picocli.CommandLine.Help.Ansi;

/**
 * What the output is read on.
 *
 * @param isColoured whether it understands escape sequences of ISO/IEC 6429
 * @param width how many cells a line should take at most
 * @param isWatched whether complaints go to a terminal, where progress may be shown
 */
record Terminal(boolean isColoured, int width, boolean isWatched) {

  /** Whether colours are used. */
  enum Colours {
    /** On a terminal. */
    AUTO,
    /** Always. */
    ALWAYS,
    /** Never. */
    NEVER
  }

  /** No colours, and the width that every terminal has. */
  static final Terminal PLAIN = new Terminal(false, 80, false);

  /** Longer lines are hard to read, and shorter ones hold no paragraph. */
  private static final int WIDEST = 100;

  private static final int NARROWEST = 50;

  /**
   * Looks at the terminal that the process runs in.
   *
   * @param environment the variables of the process: {@code NO_COLOR} and {@code TERM=dumb} switch
   *     colours off, {@code COLUMNS} gives the width, {@code CHAINWRIGHT_STDERR=terminal} says that
   *     standard error is a terminal, which Java cannot tell, or is read by a program that shows
   *     the progress
   * @return the terminal; without colours where the output goes to a file or another program
   */
  static Terminal of(Map<String, String> environment) {
    boolean isDumb = "dumb".equals(environment.get("TERM"));
    String columns = environment.getOrDefault("COLUMNS", "");
    int width = columns.matches("[1-9]\\d{0,3}") ? Integer.parseInt(columns) : PLAIN.width;
    return new Terminal(
        Ansi.AUTO.enabled() && !isDumb,
        Math.max(NARROWEST, Math.min(WIDEST, width)),
        !isDumb && "terminal".equals(environment.get("CHAINWRIGHT_STDERR")));
  }

  Terminal with(Colours colours) {
    return switch (colours) {
      case ALWAYS -> new Terminal(true, width, isWatched);
      case NEVER -> new Terminal(false, width, isWatched);
      case AUTO -> this;
    };
  }

  /**
   * Returns a text in a rendition.
   *
   * @param rendition the parameters of SGR, such as "1;31" for bold red
   * @param text one line
   * @return the text between the escape sequences; as it is where there are no colours
   */
  String painted(String rendition, String text) {
    return isColoured ? "\u001b[" + rendition + "m" + text + "\u001b[0m" : text;
  }
}
