package chainwright.app.plot;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Curves over a logarithmic frequency axis, such as a high-pass and the chain before it.
 *
 * @param title the heading; may be empty
 * @param response what is shown, and so the unit of every height
 * @param curves the lines [Hz] to the response's unit; may be empty
 * @param zones named parts of the frequency axis; may overlap; parts off the axis are not shown
 * @param markers points with a word; those off the frequency axis are not shown
 * @param frequencies the ends of the frequency axis [Hz], the lower above 0
 * @param values the ends of the value axis in the response's unit, or null to choose them by what
 *     is shown
 */
public record FrequencyPlot(
    String title,
    Response response,
    List<Curve> curves,
    List<Zone> zones,
    List<FrequencyMarker> markers,
    ValueRange frequencies,
    @Nullable ValueRange values)
    implements Plot {

  private static final ValueRange AUDIBLE = new ValueRange(20, 20_000);

  /**
   * Copies the lists and checks the frequency axis.
   *
   * @param title the heading
   * @param response what is shown
   * @param curves the lines
   * @param zones named parts of the frequency axis
   * @param markers points with a word
   * @param frequencies the ends of the frequency axis [Hz]
   * @param values the ends of the value axis, or null
   * @throws IllegalArgumentException if the frequency axis does not start above 0 Hz
   */
  public FrequencyPlot {
    curves = List.copyOf(curves);
    zones = List.copyOf(zones);
    markers = List.copyOf(markers);
    if (!(frequencies.low() > 0)) {
      throw new IllegalArgumentException(
          "the frequency axis must start above 0 Hz, but started at " + frequencies.low() + " Hz");
    }
  }

  /**
   * Returns a plot of gain from 20 Hz to 20 kHz, without zones and markers.
   *
   * @param title the heading
   * @param curves the lines, [Hz] to [dB]
   * @return the plot
   */
  public static FrequencyPlot of(String title, List<Curve> curves) {
    return new FrequencyPlot(
        title, Response.MAGNITUDE, curves, List.of(), List.of(), AUDIBLE, null);
  }

  /**
   * Returns a copy that shows another response.
   *
   * @param newResponse what the heights of curves and markers are
   * @return the copy
   */
  public FrequencyPlot withResponse(Response newResponse) {
    return new FrequencyPlot(title, newResponse, curves, zones, markers, frequencies, values);
  }

  /**
   * Returns a copy with these zones.
   *
   * @param newZones named parts of the frequency axis
   * @return the copy
   */
  public FrequencyPlot withZones(List<Zone> newZones) {
    return new FrequencyPlot(title, response, curves, newZones, markers, frequencies, values);
  }

  /**
   * Returns a copy with these markers.
   *
   * @param newMarkers points with a word
   * @return the copy
   */
  public FrequencyPlot withMarkers(List<FrequencyMarker> newMarkers) {
    return new FrequencyPlot(title, response, curves, zones, newMarkers, frequencies, values);
  }

  /**
   * Returns a copy with another frequency axis.
   *
   * @param newFrequencies its ends [Hz]
   * @return the copy
   * @throws IllegalArgumentException if the axis does not start above 0 Hz
   */
  public FrequencyPlot withFrequencies(ValueRange newFrequencies) {
    return new FrequencyPlot(title, response, curves, zones, markers, newFrequencies, values);
  }

  /**
   * Returns a copy with a given value axis.
   *
   * @param newValues its ends in the response's unit
   * @return the copy
   */
  public FrequencyPlot withValues(ValueRange newValues) {
    return new FrequencyPlot(title, response, curves, zones, markers, frequencies, newValues);
  }

  @Override
  public <R> R accept(Visitor<R> visitor) {
    return visitor.visit(this);
  }
}
