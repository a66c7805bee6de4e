package chainwright.app.render;

import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.engine.mix.MixPlan;
import chainwright.engine.sound.RateLeg;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be rendered, and how it is to be written.
 *
 * @param plan the chains and buses, that which is meant last; at least one
 * @param rateHz the sample rate of all takes [Hz]; the file has another where what is meant changes
 *     it
 * @param fromFrame the first frame that is rendered, counted from the start of the takes
 * @param toFrame the frame after the last
 * @param policy at what level it is written
 * @param declaredLufs the loudness that it is meant for
 * @param declaredDbtp the highest true peak that it is meant to have
 * @param output the file to be written
 * @param kind what kind of file it is
 * @param samples how its samples are stored
 * @param mayReplace whether a file that is there may be replaced
 * @param stems where to write what goes into each bus, if it is wanted
 * @param threads how many threads may work, ≥ 1; the result is the same with any number
 */
public record RenderOrder(
    MixPlan plan,
    double rateHz,
    long fromFrame,
    long toFrame,
    LevelPolicy policy,
    OptionalDouble declaredLufs,
    OptionalDouble declaredDbtp,
    Path output,
    FileKind kind,
    SampleKind samples,
    boolean mayReplace,
    Optional<StemOrder> stems,
    int threads) {

  /** What a recording may rise to where the chain says nothing [dBTP]. Source: EBU R 128. */
  private static final double USUAL_CEILING_DBTP = -1;

  /**
   * Returns what the true peak may rise to where the level is raised to match.
   *
   * @return the declared one, or the usual [dBTP]
   */
  public double ceilingDbtp() {
    return declaredDbtp.orElse(USUAL_CEILING_DBTP);
  }

  /**
   * Returns the sample rate of the file.
   *
   * @return the rate [Hz]
   */
  public double fileRateHz() {
    List<RateLeg> legs = plan.target().sound().legs();
    return legs.isEmpty() ? rateHz : legs.get(legs.size() - 1).conversion().filter().to().hertz();
  }

  /** The first frame of the file, counted at its own rate from the start of the takes. */
  long firstFileFrame() {
    return plan.target().sound().deliveredFrames(fromFrame);
  }

  /** The frame after the last of the file, counted at its own rate from the start of the takes. */
  long endFileFrame() {
    return plan.target().sound().deliveredFrames(toFrame);
  }
}
