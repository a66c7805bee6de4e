package chainwright.app.cli;

import chainwright.app.render.RenderProgress;
import java.io.PrintWriter;

/** Shows on one line of a terminal how far a render is. */
final class ProgressBar implements RenderProgress {

  private static final int CELLS = 30;

  private final PrintWriter out;
  private String shown = "";

  ProgressBar(PrintWriter out) {
    this.out = out;
  }

  @Override
  public void done(double share, boolean isAgain) {
    int full = (int) (share * CELLS);
    String line =
        (isAgain ? "again, with the gain  " : "rendering             ")
            + "#".repeat(full)
            + ".".repeat(CELLS - full)
            + String.format(" %3d %%", (int) (share * 100));
    if (!line.equals(shown)) {
      out.print("\r" + line);
      out.flush();
      shown = line;
    }
  }

  /** Takes the line away. */
  void clear() {
    out.print("\r" + " ".repeat(shown.length()) + "\r");
    out.flush();
  }
}
