package chainwright.app.plot;

import java.util.List;
import java.util.regex.Pattern;

/**
 * The inks and papers of an SVG plot, each written {@code #rrggbb}.
 *
 * <p>The given themes keep every ink at a contrast of 3:1 or more on its paper and all text at
 * 4.5:1 or more, those of high contrast at 7:1; lines differ in dash and weight too, so no hue is
 * needed to tell them apart.
 *
 * @param ground the sheet around the plot
 * @param plate the paper of the plot itself
 * @param ink title, frame and readings
 * @param quietInk tick labels, zone names and units
 * @param grid the lines of the grid
 * @param zone the tint of every other zone, and of the knee
 * @param otherZone the tint of the zones between
 * @param stage the ink of {@link CurveRole#STAGE} and of odd harmonics
 * @param chainSoFar the ink of {@link CurveRole#CHAIN_SO_FAR}
 * @param comparison the ink of {@link CurveRole#COMPARISON} and of even harmonics
 * @param returnBranch the ink of {@link CurveRole#RETURN} and {@link CurveRole#BRANCH}
 * @param above the wash between the stage's curve and the baseline where it lies above
 * @param below the wash between the stage's curve and the baseline where it lies below
 */
public record PlotTheme(
    String ground,
    String plate,
    String ink,
    String quietInk,
    String grid,
    String zone,
    String otherZone,
    String stage,
    String chainSoFar,
    String comparison,
    String returnBranch,
    String above,
    String below) {

  private static final Pattern COLOUR = Pattern.compile("#[0-9a-f]{6}");

  /** Warm paper and dark ink: reads beside a light and a dark page, and is the default. */
  public static final PlotTheme PAPER =
      new PlotTheme(
          "#f3ecdc", "#faf6ea", "#27241f", "#655c4b", "#e0d6bf", "#e9dcbd", "#dbe2d3", "#17405a",
          "#a3421f", "#5b6d2c", "#7a3a66", "#e2a45c", "#7fa9bb");

  /** White and grey paper for a light page. */
  public static final PlotTheme LIGHT =
      new PlotTheme(
          "#ffffff", "#fbfbf9", "#22252a", "#5c6068", "#dfe1e2", "#efe6d2", "#e1e9e2", "#17405a",
          "#a3421f", "#55682a", "#7a3a66", "#e2a45c", "#7fa9bb");

  /** Dark slate paper and chalk for a dark page. */
  public static final PlotTheme DARK =
      new PlotTheme(
          "#25272b", "#2b2e32", "#ece6d8", "#b3ab9b", "#3d4146", "#423d33", "#36423f", "#f1dcae",
          "#ec9a72", "#a3bf85", "#d3a2c3", "#c98a45", "#5f8fa3");

  /** Black and white, and few tints, for a light page of high contrast. */
  public static final PlotTheme CONTRAST_LIGHT =
      new PlotTheme(
          "#ffffff", "#ffffff", "#000000", "#000000", "#b0b0b0", "#f2ede0", "#e8f0ea", "#00263d",
          "#7a2600", "#33470a", "#5c1148", "#e2a45c", "#7fa9bb");

  /** White on black, and few tints, for a dark page of high contrast. */
  public static final PlotTheme CONTRAST_DARK =
      new PlotTheme(
          "#000000", "#000000", "#ffffff", "#ffffff", "#555555", "#24211a", "#16211d", "#fff3d0",
          "#ffb48c", "#c3e0a4", "#efc4e2", "#b87a35", "#4f8299");

  /**
   * Checks the spelling of each colour.
   *
   * @param ground the sheet around the plot
   * @param plate the paper of the plot itself
   * @param ink title, frame and readings
   * @param quietInk tick labels, zone names and units
   * @param grid the lines of the grid
   * @param zone the tint of every other zone
   * @param otherZone the tint of the zones between
   * @param stage the ink of the stage
   * @param chainSoFar the ink of the chain so far
   * @param comparison the ink of a comparison
   * @param returnBranch the ink of a way back
   * @param above the wash above the baseline
   * @param below the wash below the baseline
   * @throws IllegalArgumentException if a colour is not a hash and six lower-case hex digits
   */
  public PlotTheme {
    for (String colour :
        List.of(
            ground,
            plate,
            ink,
            quietInk,
            grid,
            zone,
            otherZone,
            stage,
            chainSoFar,
            comparison,
            returnBranch,
            above,
            below)) {
      if (!COLOUR.matcher(colour).matches()) {
        throw new IllegalArgumentException(
            "a colour must be a hash and six lower-case hex digits, but was `" + colour + "`");
      }
    }
  }

  String ofRole(CurveRole role) {
    return switch (role) {
      case STAGE -> stage;
      case CHAIN_SO_FAR -> chainSoFar;
      case COMPARISON -> comparison;
      case RETURN, BRANCH -> returnBranch;
    };
  }
}
