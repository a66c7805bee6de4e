package chainwright.engine.sound;

import chainwright.dsp.nonlinear.HardClipShaper;
import chainwright.dsp.nonlinear.OverloadDesign;
import chainwright.dsp.nonlinear.ShapingDesign;
import chainwright.dsp.nonlinear.SoftClipShaper;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.LatencyDesign;
import chainwright.dsp.signal.NoiseFloorDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.notation.model.Settings;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The way through analogue equipment: out at a level, in and out of the equipment, which clips,
 * back at a level and with a noise, and late.
 *
 * <p>Where the alignment says which digital level stands for which analogue one, the converters
 * clip hard at full scale and the equipment rounds peaks from 1 dB below its clip level to 1 dB
 * above, both where the sound comes in and, if stages model the equipment, where it leaves. Without
 * an alignment nothing clips, since nobody knows where. What stays below is passed exactly as it
 * is. The noise is that of the return, behind the change of level and before the converter.
 *
 * @param settings the levels, the latency and the noise
 * @param alignment which digital level [dBFS] stands for 0 dBu, if known
 * @param rate the sample rate
 * @param seed what its noise begins with: another for each insert, since noises of several pieces
 *     of equipment add up by their powers
 */
record InsertSound(Settings settings, Optional<Level> alignment, SampleRate rate, long seed) {

  /** How far the rounding reaches below and above the clip level together [dB]; ours. */
  private static final double KNEE_WIDTH_DB = 2;

  /** The multiple of the rate that the equipment's rounding is computed at. */
  private static final int OVERSAMPLING = 8;

  /** Returns the way into the equipment: the converter and what the equipment's input takes. */
  ProcessorDesign out() {
    List<ProcessorDesign> parts = new ArrayList<>();
    converter().ifPresent(parts::add);
    equipment().ifPresent(parts::add);
    return new SeriesDesign(parts);
  }

  /**
   * Returns the way out of it and back.
   *
   * @param isModelled whether stages stand for the equipment, which may have raised the level
   */
  ProcessorDesign back(boolean isModelled) {
    List<ProcessorDesign> parts = new ArrayList<>();
    if (isModelled) {
      equipment().ifPresent(parts::add);
    }
    parts.add(FactorDesign.ofGainDb(level("send") - level("return")));
    settings
        .number("noise")
        .ifPresent(levelDbfs -> parts.add(new NoiseFloorDesign(levelDbfs, seed)));
    converter().ifPresent(parts::add);
    settings
        .number("latency")
        .ifPresent(
            seconds -> parts.add(new LatencyDesign((int) Math.round(seconds * rate.hertz()))));
    return new SeriesDesign(parts);
  }

  private double level(String name) {
    return settings.number(name).orElse(0.0);
  }

  private Optional<ProcessorDesign> converter() {
    return alignment.map(level -> new ShapingDesign(new HardClipShaper(0)));
  }

  private Optional<ProcessorDesign> equipment() {
    return alignment.flatMap(
        level ->
            settings
                .number("clip-level")
                .map(
                    clipDbu ->
                        new OverloadDesign(
                            new SoftClipShaper(
                                level.decibels() + clipDbu - level("send"), KNEE_WIDTH_DB),
                            OVERSAMPLING)));
  }
}
