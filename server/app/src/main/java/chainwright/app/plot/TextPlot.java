package chainwright.app.plot;

/**
 * Draws a plot as lines of text, for a terminal and for editors that show no images.
 *
 * <p>Curves are drawn in braille dots, two by four a character, the stage solid and twice as heavy
 * as the others, those dashed or dotted. No line ends in a space.
 */
public final class TextPlot {

  private TextPlot() {}

  /**
   * Returns the plot in the usual size, in Unicode.
   *
   * @param plot what to draw
   * @return its lines, each ending in a line break
   */
  public static String render(Plot plot) {
    return render(plot, TextStyle.UNICODE);
  }

  /**
   * Returns the plot in a given size.
   *
   * @param plot what to draw
   * @param style the size and the characters
   * @return its lines, each ending in a line break; words that do not fit are cut
   */
  public static String render(Plot plot, TextStyle style) {
    return new TextSheet(ChartOf.plot(plot), style).draw();
  }
}
