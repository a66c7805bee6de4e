package chainwright.app.view;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.LevelLine;
import chainwright.app.plot.LevelPlot;
import chainwright.app.plot.LevelReading;
import chainwright.app.plot.Samples;
import chainwright.app.plot.ValueRange;
import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.GateCurve;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.engine.path.PathElement.StageElement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes the plot of a static curve: level out over level in. */
public final class DynamicsPlots {

  private static final int LEVELS = 121;
  private static final double USUAL_LOWEST_DBFS = -60;
  private static final double ROOM_DB = 12;
  private static final double STEP_DB = 24;

  private DynamicsPlots() {}

  /**
   * Returns the static curve of a stage.
   *
   * @param stage the stage
   * @param curve its curve
   * @param nominal the level at which the curve is read
   * @return the plot, from −60 dBFS or a step below the threshold
   */
  public static LevelPlot level(StageElement stage, StaticCurve curve, Nominal nominal) {
    Optional<Double> threshold = stage.context().settings().number("threshold");
    double lowest =
        Math.min(
            USUAL_LOWEST_DBFS, STEP_DB * Math.floor((threshold.orElse(0.0) - ROOM_DB) / STEP_DB));
    Samples inputs = Samples.ofEvenlySpaced(lowest, 0, LEVELS);
    boolean isTwofold = curve instanceof GateCurve gate && gate.hysteresisDb() > 0;
    List<Curve> curves = new ArrayList<>();
    curves.add(
        new Curve(
            isTwofold ? "opening" : stage.word(),
            CurveRole.STAGE,
            inputs,
            inputs.map(curve::outputDb)));
    List<LevelLine> lines = new ArrayList<>();
    threshold.ifPresent(
        level -> lines.add(new LevelLine(level, "threshold " + Readings.number(level, 1))));
    if (isTwofold) {
      GateCurve gate = (GateCurve) curve;
      curves.add(
          new Curve(
              "closing", CurveRole.RETURN, inputs, inputs.map(gate.closingCurve()::outputDb)));
      double closing = gate.thresholdDb() - gate.hysteresisDb();
      lines.add(new LevelLine(closing, "closes " + Readings.number(closing, 1)));
    }
    LevelPlot plot =
        LevelPlot.of(StagePlots.title(stage), curves)
            .withLevels(new ValueRange(lowest, 0))
            .withThresholds(lines)
            .withReading(
                new LevelReading(
                    nominal.isDeclared() ? "at the alignment level" : "at the nominal level",
                    nominal.levelDbfs(),
                    curve.outputDb(nominal.levelDbfs()),
                    curve.gainReductionDb(nominal.levelDbfs())));
    if (curve instanceof CompressorCurve compressor && compressor.kneeWidthDb() > 0) {
      double half = compressor.kneeWidthDb() / 2;
      plot =
          plot.withKnee(
              new ValueRange(compressor.thresholdDb() - half, compressor.thresholdDb() + half));
    }
    return plot;
  }
}
