package chainwright.engine.stage;

import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.FilterCascade;
import chainwright.dsp.filter.FilterDesign;
import chainwright.dsp.filter.LaterResponse;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * A stage that is wholly described by its response, and so processes audio by just that response:
 * what is plotted is what sounds.
 */
public interface LinearStage extends StageModel {

  @Override
  default Optional<ProcessorDesign> processor(StageAudio audio) {
    return Optional.of(running(design(audio.context()).response()));
  }

  /**
   * Returns what runs a response that is made of filters and factors.
   *
   * @param response the response
   * @return the processor's design
   * @throws IllegalArgumentException if the response cannot be run sample by sample
   */
  static ProcessorDesign running(Response response) {
    if (response instanceof FilterCascade cascade) {
      return new FilterDesign(cascade);
    }
    if (response instanceof LaterResponse later) {
      return new FilterDesign(later.designed());
    }
    if (response instanceof ConstantFactor constant) {
      return new FactorDesign(constant.factor());
    }
    if (response instanceof ResponseProduct product) {
      return FilterDesign.inSeries(product.parts().stream().map(LinearStage::running).toList());
    }
    throw new IllegalArgumentException(
        "a response that runs must be made of filters and factors, but was "
            + response.getClass().getSimpleName());
  }
}
