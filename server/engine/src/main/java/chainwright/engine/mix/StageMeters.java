package chainwright.engine.mix;

import chainwright.dsp.filter.Response;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.sound.StageTap;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.Family;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Measures what each stage of dynamics gets and how far it lowers it. A stage that is made to sound
 * again is measured anew.
 */
public final class StageMeters implements StageTap {

  /** What delivers below a ceiling lowers as a stage of dynamics does. */
  private static final Set<String> CEILINGS = Set.of("true-peak-limiter");

  private static final double REST_HZ = 1000;

  private final List<Running> running = new ArrayList<>();

  /**
   * A stage and what was measured at it.
   *
   * @param stage the stage
   * @param reading what it got and did
   */
  public record Measured(StageElement stage, StageReading reading) {}

  private record Running(StageElement stage, StageMeter meter) {}

  /** Measures nothing yet. */
  public StageMeters() {}

  @Override
  public ProcessorDesign tap(StageElement stage, ProcessorDesign design) {
    boolean isMeasured =
        stage.stage().kind().family() == Family.DYNAMICS || CEILINGS.contains(stage.word());
    if (!isMeasured) {
      return design;
    }
    StageMeter meter = new StageMeter(stage.context().rate(), restDb(stage));
    running.add(new Running(stage, meter));
    return new MeteredDesign(design, meter);
  }

  /** A make-up gain is no reduction. */
  private static double restDb(StageElement stage) {
    return stage.sound().map(StageSound::response).map(StageMeters::magnitudeDb).orElse(0.0);
  }

  private static double magnitudeDb(Response response) {
    double[] re = {1};
    double[] im = {0};
    response.multiply(new double[] {REST_HZ}, re, im);
    return 20 * Math.log10(Math.hypot(re[0], im[0]));
  }

  /**
   * Returns what was measured.
   *
   * @return a reading a stage, in the order in which they were made to sound
   */
  public List<Measured> readings() {
    return running.stream().map(one -> new Measured(one.stage, one.meter.measure())).toList();
  }
}
