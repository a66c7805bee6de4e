package chainwright.engine.stage;

import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.dynamics.PeakHoldDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code ducker}: 2 dB, 10 ms and 150 ms unless the settings say otherwise.
 *
 * <p>The levels of its curve are those of the key, which its detector follows by its peaks. The
 * hold keeps each peak of the key for its time, and is not part of the curve.
 */
public final class Ducker implements StageModel {

  /** Makes the model, which has no state. */
  public Ducker() {}

  @Override
  public StageSound design(StageContext context) {
    return CappedReduction.design(context, "reduction");
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    ProcessorDesign hold = new PeakHoldDesign(context.frames("hold"));
    return design(context)
        .compressor()
        .map(
            compressor ->
                LevelControlDesign.of(compressor, context.rate(), audio.keyThrough(hold)));
  }
}
