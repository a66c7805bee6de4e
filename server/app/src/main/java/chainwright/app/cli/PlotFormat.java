package chainwright.app.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a plot is written as. */
enum PlotFormat {
  /** A drawing in characters. */
  TEXT("txt"),
  /** A picture of lines. */
  SVG("svg"),
  /** A picture of dots. */
  PNG("png"),
  /** Numbers in columns. */
  CSV("csv"),
  /** Numbers with what they belong to. */
  JSON("json");

  private final String ending;

  PlotFormat(String ending) {
    this.ending = ending;
  }

  /**
   * Tells the format by the name of a file.
   *
   * @param file the file
   * @return the format that its ending names, or empty
   */
  static Optional<PlotFormat> of(Path file) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(one -> name.endsWith("." + one.ending)).findFirst();
  }

  /**
   * Asks whether it is a drawing, which shows the whole curve.
   *
   * @return whether it draws curves rather than to write numbers
   */
  boolean isDrawing() {
    return this == TEXT || this == SVG || this == PNG;
  }
}
