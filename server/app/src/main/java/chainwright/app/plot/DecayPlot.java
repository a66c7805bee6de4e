package chainwright.app.plot;

import java.util.List;

/**
 * Level over time once the sound has stopped: the decay of a room as curves, the repeats of an echo
 * as stems, and the fall by 60 dB as a line across.
 *
 * @param title the heading; may be empty
 * @param caption what is shown, in a few words
 * @param curves time [s] to level [dB]; may be empty
 * @param repeats the sounds that come once, in the order of time; may be empty
 * @param events moments with a name, such as the end of the pre-delay
 * @param marks points with a word, such as where the fall has come to 60 dB
 * @param times the ends of the time axis [s]
 */
public record DecayPlot(
    String title,
    String caption,
    List<Curve> curves,
    List<Repeat> repeats,
    List<TimeEvent> events,
    List<TimeMark> marks,
    ValueRange times)
    implements Plot {

  /** The fall that a decay is timed by [dB]. Source: ISO 3382-1, reverberation time. */
  public static final double FALL_DB = -60;

  /** The lower end of the level axis [dB], a little below the fall. */
  private static final double LOWEST_DB = -72;

  private static final double HIGHEST_DB = 6;

  /** Room for the label of a repeat on top. */
  private static final double HIGHEST_OF_REPEATS_DB = 11.5;

  /**
   * Copies the lists.
   *
   * @param title the heading
   * @param caption what is shown
   * @param curves the lines
   * @param repeats the sounds that come once
   * @param events moments with a name
   * @param marks points with a word
   * @param times the ends of the time axis [s]
   */
  public DecayPlot {
    curves = List.copyOf(curves);
    repeats = List.copyOf(repeats);
    events = List.copyOf(events);
    marks = List.copyOf(marks);
  }

  /** Returns the ends of the level axis [dB]. */
  ValueRange levels() {
    return new ValueRange(LOWEST_DB, repeats.isEmpty() ? HIGHEST_DB : HIGHEST_OF_REPEATS_DB);
  }

  @Override
  public <R> R accept(Visitor<R> visitor) {
    return visitor.visit(this);
  }
}
