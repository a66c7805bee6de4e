package chainwright.engine.stage;

import chainwright.dsp.dynamics.MovingBandDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import java.util.Optional;

/** What bells and shelves that move with the level have in common when they process audio. */
final class MovingBand {

  private MovingBand() {}

  /**
   * Designs a bell or shelf that follows its detector.
   *
   * @param audio the stage
   * @param sound its design, with a compressor and a band that its detector hears
   */
  static Optional<ProcessorDesign> processor(
      StageAudio audio,
      StageSound sound,
      MovingBandDesign.Shape shape,
      Frequency frequency,
      QualityFactor quality) {
    return sound
        .compressor()
        .map(
            compressor ->
                new MovingBandDesign(
                    shape,
                    frequency,
                    quality,
                    compressor,
                    audio.context().rate(),
                    audio.keyThrough(LinearStage.running(sound.detection().orElseThrow()))));
  }
}
