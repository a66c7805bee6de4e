package chainwright.app.view;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.FrequencyPlot;
import chainwright.dsp.filter.MidSideResponse;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Step;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Makes the plots of structures: their ways thin, what comes out of them heavy.
 *
 * @param source the kind of source, whose zones are shown
 * @param rate the sample rate
 */
public record StructurePlots(Optional<SourceKind> source, SampleRate rate) {

  /**
   * Returns a structure's branches and their sum.
   *
   * @param title the heading
   * @param split the structure
   * @return the plot
   */
  public FrequencyPlot sum(String title, SplitElement split) {
    List<Curve> curves = new ArrayList<>();
    for (PathBranch branch : split.branches()) {
      if (split.branches().size() > 1) {
        curves.add(curve(name(branch.branch(), split), CurveRole.BRANCH, branch.response()));
      }
    }
    curves.add(curve(curves.isEmpty() ? name(split) : "sum", CurveRole.STAGE, split.response()));
    return plot(title, curves);
  }

  /**
   * Returns what the middle and the side get.
   *
   * @param title the heading
   * @param stereo the responses of middle and side
   * @return the plot
   */
  public FrequencyPlot midSide(String title, MidSideResponse stereo) {
    return against(title, "mid", stereo.mid(), "side", stereo.side());
  }

  /**
   * Returns one response against another that it is a part of or follows.
   *
   * @param title the heading
   * @param name the name of the one
   * @param response the one
   * @param otherName the name of the other
   * @param other the other
   * @return the plot
   */
  public FrequencyPlot against(
      String title, String name, Response response, String otherName, Response other) {
    return plot(
        title,
        List.of(
            curve(otherName, CurveRole.CHAIN_SO_FAR, other),
            curve(name, CurveRole.STAGE, response)));
  }

  /**
   * Returns one response.
   *
   * @param title the heading
   * @param name its name
   * @param response the response
   * @return the plot
   */
  public FrequencyPlot single(String title, String name, Response response) {
    return plot(title, List.of(curve(name, CurveRole.STAGE, response)));
  }

  /**
   * Names a branch by what is written of it.
   *
   * @param branch the branch
   * @param split the structure that it belongs to
   * @return such as "dry", "below 200 Hz" or "side"
   */
  public static String name(Branch branch, SplitElement split) {
    if (!branch.title().isEmpty()) {
      return branch.title();
    }
    if (split.step() instanceof Step.Multiband multiband) {
      for (Step.Band band : multiband.bands()) {
        if (band.branch().span().equals(branch.span())) {
          return name(band);
        }
      }
    }
    return branch.word();
  }

  private static String name(Step.Band band) {
    if (band.lowHz() <= 0) {
      return "below " + Readings.frequency(band.highHz());
    }
    return Double.isInfinite(band.highHz())
        ? "above " + Readings.frequency(band.lowHz())
        : Readings.band(band.lowHz(), band.highHz());
  }

  private static String name(SplitElement split) {
    return split.branches().isEmpty() ? "unchanged" : split.branches().get(0).branch().word();
  }

  private FrequencyPlot plot(String title, List<Curve> curves) {
    return FrequencyPlot.of(title, curves).withZones(StagePlots.zones(source));
  }

  private Curve curve(String label, CurveRole role, Response response) {
    return StagePlots.curve(label, role, rate.nyquist(), response);
  }
}
