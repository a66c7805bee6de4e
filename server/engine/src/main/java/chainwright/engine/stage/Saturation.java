package chainwright.engine.stage;

import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.filter.SumOfPaths;
import chainwright.dsp.nonlinear.SaturationDesign;
import chainwright.dsp.nonlinear.SaturationModel;
import chainwright.dsp.nonlinear.SaturationSettings;
import chainwright.dsp.nonlinear.TapeSaturation;
import chainwright.dsp.nonlinear.TransformerSaturation;
import chainwright.dsp.nonlinear.ValveSaturation;
import chainwright.dsp.signal.OversamplingDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import java.util.List;
import java.util.Optional;

/**
 * Designs {@code saturation}: 3 dB of drive, 0.3 % at alignment, all of it saturated unless the
 * settings say otherwise.
 *
 * <p>The response is that of a small signal: the head bump of tape, or the high-pass at 2 Hz that
 * takes the offset of an asymmetric curve, in the share that {@code blend} says; else no change.
 * The harmonics are those of a settled tone. A valve differs from an asymmetric saturation by the
 * bias, which gives way to what is driven more than 12 dB above alignment. At 0 % it saturates
 * nothing; more distortion than a curve can give, from about 40 % on, allows no design.
 */
public final class Saturation implements StageModel {

  /** The quality factor of the head bump, as that of {@link TapeSaturation}. */
  private static final QualityFactor BUMP_QUALITY = new QualityFactor(1);

  /** Makes the model, which has no state. */
  public Saturation() {}

  @Override
  public StageSound design(StageContext context) {
    double wetShare = context.number("blend") / 100;
    double thdShare = context.number("thd-at-alignment") / 100;
    Response response = smallSignal(linear(context, thdShare), wetShare);
    if (thdShare == 0) {
      return StageSound.ofResponse(response);
    }
    SaturationModel model = settings(context, thdShare).design();
    return StageSound.ofHarmonics(
            (hertz, levelDbfs, count) ->
                model.harmonics(hertz, levelDbfs, count).withDry(wetShare, levelDbfs))
        .withResponse(response);
  }

  /**
   * {@inheritDoc}
   *
   * <p>The untouched input is blended in at the multiple of the rate, so that it passes through the
   * same filters as the saturated sound, equally late: nothing cancels, and at rest both together
   * are flat as far as the filters are.
   */
  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    double wetShare = context.number("blend") / 100;
    double thdShare = context.number("thd-at-alignment") / 100;
    if (thdShare == 0) {
      ProcessorDesign linear =
          linear(context, thdShare).map(LinearStage::running).orElse(new SeriesDesign(List.of()));
      return Optional.of(SumDesign.ofBlend(linear, wetShare));
    }
    int factor = (int) context.number("oversampling");
    ProcessorDesign saturated =
        new SaturationDesign(settings(context, thdShare).design(), factor * context.rate().hertz());
    return Optional.of(new OversamplingDesign(SumDesign.ofBlend(saturated, wetShare), factor));
  }

  private static SaturationSettings settings(StageContext context, double thdShare) {
    double driveDb = context.number("drive");
    if (context.is("character", "tape")) {
      return new TapeSaturation(
          driveDb, thdShare, context.number("treble-saturation"), context.number("head-bump"));
    }
    if (context.is("character", "transformer")) {
      return new TransformerSaturation(driveDb, thdShare, context.number("bass-saturation"), 0);
    }
    boolean isSymmetric = context.is("character", "symmetric");
    return new ValveSaturation(
        driveDb,
        thdShare,
        isSymmetric ? 0 : context.number("asymmetry") / 100,
        isValve(context) ? context.number("bias-shift") : 0);
  }

  private static boolean isValve(StageContext context) {
    return context.is("character", "valve");
  }

  private static Response smallSignal(Optional<Response> linear, double wetShare) {
    if (linear.isEmpty() || wetShare == 0) {
      return StageSound.NOTHING.response();
    }
    return new SumOfPaths(
        List.of(
            new ResponseProduct(List.of(linear.get(), new ConstantFactor(wetShare))),
            new ConstantFactor(1 - wetShare)));
  }

  /** What a small signal passes; empty if nothing. */
  private static Optional<Response> linear(StageContext context, double thdShare) {
    if (context.is("character", "tape")) {
      return context.number("head-bump") == 0 ? Optional.empty() : Optional.of(bump(context));
    }
    boolean hasOffset =
        thdShare > 0
            && !context.is("character", "symmetric")
            && !context.is("character", "transformer")
            && (context.number("asymmetry") > 0
                || (isValve(context) && context.number("bias-shift") > 0));
    return hasOffset
        ? Optional.of(
            Curve.BILINEAR.design(
                PassPrototypes.highPass(
                    PassFamily.BUTTERWORTH, 1, Frequency.ofHertz(ValveSaturation.COUPLING_HZ)),
                context.rate()))
        : Optional.empty();
  }

  private static Response bump(StageContext context) {
    return context
        .curve()
        .design(
            EqualiserPrototypes.bell(
                Frequency.ofHertz(TapeSaturation.HEAD_BUMP_HZ),
                context.decibels("head-bump"),
                BUMP_QUALITY),
            context.rate());
  }
}
