package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import org.jspecify.annotations.Nullable;

/** The response of a filter that is designed when it is first looked at. */
public final class LaterResponse implements Response {

  private final Curve curve;
  private final AnaloguePrototype prototype;
  private final SampleRate rate;
  private volatile @Nullable FilterCascade designed;

  LaterResponse(Curve curve, AnaloguePrototype prototype, SampleRate rate) {
    this.curve = curve;
    this.prototype = prototype;
    this.rate = rate;
  }

  /**
   * Returns the filter, designed now if it has not been.
   *
   * @return the filter
   */
  public FilterCascade designed() {
    // Two threads may both design; the two results are the same.
    FilterCascade known = designed;
    if (known == null) {
      known = curve.design(prototype, rate);
      designed = known;
    }
    return known;
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    designed().multiply(hertz, re, im);
  }

  @Override
  public double boundDecibels() {
    return isPromised()
        ? MatchPromise.DEVIATION_DB + MatchPromise.highestDecibels(prototype.sections().get(0))
        : designed().boundDecibels();
  }

  @Override
  public Estimate estimateAt(double hertz) {
    if (hertz > MatchPromise.HIGHEST_SHARE * rate.hertz() || !isPromised()) {
      return Response.super.estimateAt(hertz);
    }
    double square = prototype.sections().get(0).magnitudeSquaredAt(hertz);
    return new Estimate(10 * Math.log10(square), MatchPromise.DEVIATION_DB);
  }

  private boolean isPromised() {
    return designed == null
        && curve == Curve.ANALOGUE
        && prototype.sections().size() == 1
        && MatchPromise.holdsFor(prototype.sections().get(0), rate);
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    designed().addPhase(hertz, radians);
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    designed().addLogarithmicDerivative(hertz, re, im);
  }
}
