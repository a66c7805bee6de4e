package chainwright.app.plot;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Gain over time while the input steps up and down again: what attack and release do.
 *
 * @param title the heading; may be empty
 * @param curves time [s] to gain [dB], negative where the stage turns down; may be empty
 * @param events the moments at which the input jumps
 * @param marks points with a word, such as the 63 % of an attack
 * @param times the ends of the time axis [s]
 * @param gains the ends of the gain axis [dB], or null to choose them by what is shown
 */
public record StepPlot(
    String title,
    List<Curve> curves,
    List<TimeEvent> events,
    List<TimeMark> marks,
    ValueRange times,
    @Nullable ValueRange gains)
    implements Plot {

  /**
   * Copies the lists.
   *
   * @param title the heading
   * @param curves the lines
   * @param events the moments at which the input jumps
   * @param marks points with a word
   * @param times the ends of the time axis [s]
   * @param gains the ends of the gain axis [dB], or null
   */
  public StepPlot {
    curves = List.copyOf(curves);
    events = List.copyOf(events);
    marks = List.copyOf(marks);
  }

  /**
   * Returns a plot without events and marks.
   *
   * @param title the heading
   * @param curves the lines, [s] to [dB]
   * @param times the ends of the time axis [s]
   * @return the plot
   */
  public static StepPlot of(String title, List<Curve> curves, ValueRange times) {
    return new StepPlot(title, curves, List.of(), List.of(), times, null);
  }

  /**
   * Returns a copy with these events.
   *
   * @param newEvents the moments at which the input jumps
   * @return the copy
   */
  public StepPlot withEvents(List<TimeEvent> newEvents) {
    return new StepPlot(title, curves, newEvents, marks, times, gains);
  }

  /**
   * Returns a copy with these marks.
   *
   * @param newMarks points with a word
   * @return the copy
   */
  public StepPlot withMarks(List<TimeMark> newMarks) {
    return new StepPlot(title, curves, events, newMarks, times, gains);
  }

  /**
   * Returns a copy with a given gain axis.
   *
   * @param newGains its ends [dB]
   * @return the copy
   */
  public StepPlot withGains(ValueRange newGains) {
    return new StepPlot(title, curves, events, marks, times, newGains);
  }

  @Override
  public <R> R accept(Visitor<R> visitor) {
    return visitor.visit(this);
  }
}
