package chainwright.app.plot;

import java.nio.charset.StandardCharsets;
import java.util.Base64;

/**
 * Draws a plot as a small SVG picture, 560 px wide and at most 250 px high.
 *
 * <p>The picture has an opaque ground of its own, uses presentation attributes alone and loads
 * nothing, so that it looks alike in hovers, pages and reports. All words of the plot are escaped.
 */
public final class SvgPlot {

  private static final String DATA_PREFIX = "data:image/svg+xml;base64,";

  private SvgPlot() {}

  /**
   * Returns the plot as an SVG document in the paper theme.
   *
   * @param plot what to draw
   * @return the document, ending in a line break
   */
  public static String render(Plot plot) {
    return render(plot, PlotTheme.PAPER);
  }

  /**
   * Returns the plot as an SVG document.
   *
   * @param plot what to draw
   * @param theme the inks and papers
   * @return the document, ending in a line break
   */
  public static String render(Plot plot, PlotTheme theme) {
    return new SvgSheet(ChartOf.plot(plot), theme).draw(AltText.of(plot));
  }

  /**
   * Draws a plot for a place with little height, such as a hover.
   *
   * @param plot the plot
   * @param theme its colours
   * @return the SVG document, 160 px high
   */
  public static String renderLow(Plot plot, PlotTheme theme) {
    return SvgSheet.ofLow(ChartOf.plot(plot), theme).draw(AltText.of(plot));
  }

  /**
   * Returns an SVG document as an address for an image, such as {@code
   * data:image/svg+xml;base64,…}.
   *
   * @param svg the document
   * @return the address, about a third longer than the document
   */
  public static String toDataUri(String svg) {
    return DATA_PREFIX + Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
  }
}
