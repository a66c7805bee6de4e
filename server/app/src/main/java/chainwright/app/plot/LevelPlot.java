package chainwright.app.plot;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Output level over input level, both axes alike so that "unchanged" is the diagonal.
 *
 * <p>A gate or an expander with hysteresis gives two curves: the opening branch as {@link
 * CurveRole#STAGE} and the closing branch as {@link CurveRole#RETURN}.
 *
 * @param title the heading; may be empty
 * @param curves input [dBFS] to output [dBFS]; may be empty
 * @param thresholds input levels with a name
 * @param knee the input levels between which the curve bends [dBFS], or null for a hard knee
 * @param reading what happens at one level, or null
 * @param levels the ends of both axes [dBFS]
 */
public record LevelPlot(
    String title,
    List<Curve> curves,
    List<LevelLine> thresholds,
    @Nullable ValueRange knee,
    @Nullable LevelReading reading,
    ValueRange levels)
    implements Plot {

  private static final ValueRange USUAL_LEVELS = new ValueRange(-60, 0);

  /**
   * Copies the lists.
   *
   * @param title the heading
   * @param curves the lines
   * @param thresholds input levels with a name
   * @param knee where the curve bends, or null
   * @param reading what happens at one level, or null
   * @param levels the ends of both axes [dBFS]
   */
  public LevelPlot {
    curves = List.copyOf(curves);
    thresholds = List.copyOf(thresholds);
  }

  /**
   * Returns a plot from -60 dBFS to 0 dBFS without threshold, knee and reading.
   *
   * @param title the heading
   * @param curves the lines, [dBFS] to [dBFS]
   * @return the plot
   */
  public static LevelPlot of(String title, List<Curve> curves) {
    return new LevelPlot(title, curves, List.of(), null, null, USUAL_LEVELS);
  }

  /**
   * Returns a copy with these thresholds.
   *
   * @param newThresholds input levels with a name
   * @return the copy
   */
  public LevelPlot withThresholds(List<LevelLine> newThresholds) {
    return new LevelPlot(title, curves, newThresholds, knee, reading, levels);
  }

  /**
   * Returns a copy with a knee.
   *
   * @param newKnee the input levels between which the curve bends [dBFS]
   * @return the copy
   */
  public LevelPlot withKnee(ValueRange newKnee) {
    return new LevelPlot(title, curves, thresholds, newKnee, reading, levels);
  }

  /**
   * Returns a copy with a reading.
   *
   * @param newReading what happens at one level
   * @return the copy
   */
  public LevelPlot withReading(LevelReading newReading) {
    return new LevelPlot(title, curves, thresholds, knee, newReading, levels);
  }

  /**
   * Returns a copy with other axes.
   *
   * @param newLevels the ends of both axes [dBFS]
   * @return the copy
   */
  public LevelPlot withLevels(ValueRange newLevels) {
    return new LevelPlot(title, curves, thresholds, knee, reading, newLevels);
  }

  @Override
  public <R> R accept(Visitor<R> visitor) {
    return visitor.visit(this);
  }
}
