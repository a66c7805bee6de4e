package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.GateDesign;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Response;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What a stage does to a signal.
 *
 * @param response what it does to each frequency while it is at rest: a compressor below its
 *     threshold has only its make-up gain
 * @param prototype the analogue filter that is meant, where there is one to compare with
 * @param curve its static curve, level in to level out
 * @param compressor its detector and ballistics, where it turns down what is loud
 * @param gate the same, where it turns down what is soft
 * @param detection the band that its detector hears, where it is not the whole spectrum
 * @param harmonics what harmonics it adds
 * @param decay how long what it adds goes on
 */
public record StageSound(
    Response response,
    Optional<Response> prototype,
    Optional<StaticCurve> curve,
    Optional<CompressorDesign> compressor,
    Optional<GateDesign> gate,
    Optional<Response> detection,
    Optional<HarmonicModel> harmonics,
    Optional<DecayModel> decay) {

  /** Does nothing: what passes is what came in. */
  public static final StageSound NOTHING = ofResponse(new ConstantFactor(1));

  /**
   * Makes the sound of a linear stage.
   *
   * @param response what it does to each frequency
   * @return the sound
   */
  public static StageSound ofResponse(Response response) {
    return new StageSound(
        response,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Makes the sound of a filter with the analogue filter that is meant.
   *
   * @param response the digital filter
   * @param prototype the analogue one
   * @return the sound
   */
  public static StageSound ofFilter(Response response, Response prototype) {
    return ofResponse(response).with(draft -> draft.prototype = Optional.of(prototype));
  }

  /**
   * Makes the sound of a stage that turns down what is loud.
   *
   * @param compressor its curve, detector and ballistics
   * @return the sound
   */
  public static StageSound ofCompressor(CompressorDesign compressor) {
    return NOTHING
        .withCurve(compressor.curve())
        .with(draft -> draft.compressor = Optional.of(compressor));
  }

  /**
   * Makes the sound of a stage that turns down what is soft.
   *
   * @param gate its curve, detector and ballistics
   * @return the sound
   */
  public static StageSound ofGate(GateDesign gate) {
    return NOTHING.withCurve(gate.curve()).with(draft -> draft.gate = Optional.of(gate));
  }

  /**
   * Makes the sound of a stage that adds harmonics.
   *
   * @param harmonics what it adds
   * @return the sound
   */
  public static StageSound ofHarmonics(HarmonicModel harmonics) {
    return NOTHING.with(draft -> draft.harmonics = Optional.of(harmonics));
  }

  /**
   * Returns the same sound with another response at rest.
   *
   * @param atRest what it does to each frequency while it is at rest
   * @return the copy
   */
  public StageSound withResponse(Response atRest) {
    return with(draft -> draft.response = atRest);
  }

  /**
   * Returns the same sound with a static curve that has no detector.
   *
   * @param staticCurve level in to level out
   * @return the copy
   */
  public StageSound withCurve(StaticCurve staticCurve) {
    return with(draft -> draft.curve = Optional.of(staticCurve));
  }

  /**
   * Returns the same sound with a detector that hears only a band.
   *
   * @param band what the detector hears
   * @return the copy
   */
  public StageSound withDetection(Response band) {
    return with(draft -> draft.detection = Optional.of(band));
  }

  /**
   * Returns the same sound with something that goes on after it.
   *
   * @param decay how long that takes
   * @return the copy
   */
  public StageSound withDecay(DecayModel decay) {
    return with(draft -> draft.decay = Optional.of(decay));
  }

  private StageSound with(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.finish();
  }

  /** A copy in the making, so that no copy spells what it does not change. */
  private static final class Draft {

    private Response response;
    private Optional<Response> prototype;
    private Optional<StaticCurve> curve;
    private Optional<CompressorDesign> compressor;
    private Optional<GateDesign> gate;
    private Optional<Response> detection;
    private Optional<HarmonicModel> harmonics;
    private Optional<DecayModel> decay;

    Draft(StageSound from) {
      response = from.response;
      prototype = from.prototype;
      curve = from.curve;
      compressor = from.compressor;
      gate = from.gate;
      detection = from.detection;
      harmonics = from.harmonics;
      decay = from.decay;
    }

    StageSound finish() {
      return new StageSound(
          response, prototype, curve, compressor, gate, detection, harmonics, decay);
    }
  }
}
