package chainwright.engine.stage;

import chainwright.dsp.filter.DelayDesign;
import chainwright.dsp.filter.SampledDelay;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/** What delays and alignments have in common: all but the sign that their time may have. */
interface SampledDelayStage extends StageModel {

  @Override
  default StageSound design(StageContext context) {
    return StageSound.ofResponse(delay(context));
  }

  @Override
  default Optional<ProcessorDesign> processor(StageAudio audio) {
    return Optional.of(new DelayDesign(delay(audio.context())));
  }

  private static SampledDelay delay(StageContext context) {
    return new SampledDelay(context.delaySeconds() * context.rate().hertz(), context.rate());
  }
}
