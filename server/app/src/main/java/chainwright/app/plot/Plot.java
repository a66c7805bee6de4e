package chainwright.app.plot;

/** Something to draw: a frequency response, a level curve, a step, a decay or some harmonics. */
public sealed interface Plot permits FrequencyPlot, LevelPlot, StepPlot, DecayPlot, HarmonicsPlot {

  /**
   * Returns the plot's heading.
   *
   * @return one line of text; may be empty
   */
  String title();

  /**
   * Calls the visitor's method for this kind of plot.
   *
   * @param visitor what to call
   * @param <R> what the visitor gives
   * @return its answer
   */
  <R> R accept(Visitor<R> visitor);

  /**
   * An answer for every kind of plot.
   *
   * @param <R> the answer's type
   */
  interface Visitor<R> {

    /**
     * Answers for a frequency plot.
     *
     * @param plot the plot
     * @return the answer
     */
    R visit(FrequencyPlot plot);

    /**
     * Answers for a level plot.
     *
     * @param plot the plot
     * @return the answer
     */
    R visit(LevelPlot plot);

    /**
     * Answers for a step plot.
     *
     * @param plot the plot
     * @return the answer
     */
    R visit(StepPlot plot);

    /**
     * Answers for a decay plot.
     *
     * @param plot the plot
     * @return the answer
     */
    R visit(DecayPlot plot);

    /**
     * Answers for a plot of harmonics.
     *
     * @param plot the plot
     * @return the answer
     */
    R visit(HarmonicsPlot plot);
  }
}
