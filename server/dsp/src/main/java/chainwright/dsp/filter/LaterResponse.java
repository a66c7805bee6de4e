package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;

/** The response of a filter that is designed when it is first looked at. */
public final class LaterResponse implements Response {

  /** One more factor of any filter leaves the numbers that a {@code double} holds neither way. */
  private static final double LEAST_PRODUCT = 1e-100;

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
    if (!isPromised()) {
      return designed().boundDecibels();
    }
    double sumDb = 0;
    for (AnalogueSection section : prototype.sections()) {
      sumDb += MatchPromise.DEVIATION_DB + MatchPromise.highestDecibels(section);
    }
    return sumDb;
  }

  @Override
  public Estimate estimateAt(double hertz) {
    if (hertz > MatchPromise.HIGHEST_SHARE * rate.hertz() || !isPromised()) {
      return Response.super.estimateAt(hertz);
    }
    return new Estimate(10 * Math.log10(prototypeSquare(hertz)), errorDb());
  }

  @Override
  public Estimate estimateMean(double[] hertz) {
    boolean isPromised = isPromised();
    double sumDb = 0;
    double product = 1;
    for (int i = 0; i < hertz.length && isPromised; i++) {
      isPromised = hertz[i] <= MatchPromise.HIGHEST_SHARE * rate.hertz();
      product *= prototypeSquare(hertz[i]);
      // One logarithm for many factors, as long as their product stays a number.
      if (product < LEAST_PRODUCT || product > 1 / LEAST_PRODUCT) {
        sumDb += 10 * Math.log10(product);
        product = 1;
      }
    }
    return isPromised
        ? new Estimate((sumDb + 10 * Math.log10(product)) / hertz.length, errorDb())
        : Response.super.estimateMean(hertz);
  }

  private double errorDb() {
    return prototype.sections().size() * MatchPromise.DEVIATION_DB;
  }

  private double prototypeSquare(double hertz) {
    double square = 1;
    for (int i = 0; i < prototype.sections().size(); i++) {
      square *= prototype.sections().get(i).magnitudeSquaredAt(hertz);
    }
    return square;
  }

  private boolean isPromised() {
    if (designed != null || curve != Curve.ANALOGUE) {
      return false;
    }
    for (int i = 0; i < prototype.sections().size(); i++) {
      if (!MatchPromise.holdsFor(prototype.sections().get(i), rate)) {
        return false;
      }
    }
    return true;
  }

  @Override
  public DoubleStream narrowHertz() {
    return prototype.narrowHertz();
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
