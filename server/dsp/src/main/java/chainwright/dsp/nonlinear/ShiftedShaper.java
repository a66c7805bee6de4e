package chainwright.dsp.nonlinear;

import java.util.List;

/**
 * A shaper that meets everything lower than it is, y = f(x − s) − f(−s), such as a valve whose bias
 * has given way. A small signal keeps the gain that it has there.
 *
 * @param base the shaper f
 * @param shift how much lower, s, finite
 */
record ShiftedShaper(Shaper base, double shift) implements Shaper {

  @Override
  public double shape(double sample) {
    return base.shape(sample - shift) - base.shape(-shift);
  }

  @Override
  public double slope(double sample) {
    return base.slope(sample - shift);
  }

  @Override
  public List<Double> corners() {
    return base.corners().stream().map(corner -> corner + shift).toList();
  }
}
