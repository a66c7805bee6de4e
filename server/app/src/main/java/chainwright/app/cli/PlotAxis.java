package chainwright.app.cli;

/** What a plot runs over. */
enum PlotAxis {
  /** What happens to each frequency. */
  FREQUENCY,
  /** Output level over input level. */
  LEVEL,
  /** The harmonics of a sine. */
  HARMONICS,
  /** What goes on after a sound, or how the gain follows a step. */
  TIME
}
