package chainwright.engine.stage;

import chainwright.dsp.filter.FilterDesign;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.MidSideDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.quantity.Frequency;
import java.util.List;
import java.util.Optional;

/**
 * Designs {@code width}: no change. The response is that of the middle, what both channels share,
 * which passes as it is; the side gain and the low end made mono concern what differs.
 */
public final class Width implements StageModel {

  /** Makes the model, which has no state. */
  public Width() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    ProcessorDesign gain = FactorDesign.ofGainDb(context.number("side-gain"));
    double monoBelowHz = context.number("mono-below", 0);
    ProcessorDesign side =
        monoBelowHz == 0
            ? gain
            : new SeriesDesign(
                List.of(
                    new FilterDesign(
                        context
                            .curve()
                            .design(
                                PassPrototypes.highPass(
                                    PassFamily.BUTTERWORTH,
                                    PassPrototypes.order(context.slope()),
                                    Frequency.ofHertz(monoBelowHz)),
                                context.rate())),
                    gain));
    return Optional.of(new MidSideDesign(new SeriesDesign(List.of()), side));
  }
}
