/**
 * Plots of plain data as a printed engineering chart: an SVG picture or a block of text.
 *
 * <p>A {@link chainwright.app.plot.Plot} says what is shown, in hertz, decibels and seconds; {@link
 * chainwright.app.plot.SvgPlot} and {@link chainwright.app.plot.TextPlot} draw it. Neither knows a
 * filter, a chain or an editor. Drawing never fails on data: a gap, an infinity or a value off the
 * axis is left out or cut at the frame, and the same plot gives the same bytes.
 */
@NullMarked
package chainwright.app.plot;

import org.jspecify.annotations.NullMarked;
