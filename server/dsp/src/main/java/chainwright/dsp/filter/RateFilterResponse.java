package chainwright.dsp.filter;

import chainwright.dsp.signal.KaiserWindow;
import chainwright.dsp.signal.RateFilter;
import org.jspecify.annotations.Nullable;

/**
 * What a change of sample rate does to each frequency that both rates can hold: the low-pass of its
 * {@link RateFilter}, whose delay is made up for, so that it has no phase.
 *
 * <p>The transform of a sinc under a window is the integral of the window's own over the pass band:
 * with {@code x = 2 π R (f_c ± f)}, R the window's reach to each side, {@code H(f) = C(x_−) +
 * C(x_+)}, where C is the integral from 0 to x of {@code sinh(√(β² − x²)) / (π I₀(β) √(β² − x²))}.
 *
 * <p>Source of the window's transform: A. V. Oppenheim and R. W. Schafer, Discrete-Time Signal
 * Processing, section 7.5.3 (from memory); checked against tones through the conversion itself.
 */
public final class RateFilterResponse implements Response {

  private static final double STEP = Math.PI / 128;

  /** Beyond so much more than β the integral is replaced by the first term of its series. */
  private static final double OSCILLATIONS = 40 * Math.PI;

  private final double cutoffHertz;
  private final double radiansPerHertz;
  private final double shape;
  private final double heightOfWindow;
  private final boolean isNeeded;
  private volatile double @Nullable [] integral;

  /**
   * Prepares the response.
   *
   * @param filter the low-pass
   */
  public RateFilterResponse(RateFilter filter) {
    KaiserWindow window = filter.window();
    cutoffHertz = filter.cutoffHertz();
    radiansPerHertz = 2 * Math.PI * filter.reachFrames() / filter.from().hertz();
    shape = window.shapeFactor();
    // The window is 1 / I₀(β) at its ends.
    heightOfWindow = window.at(1) / Math.PI;
    isNeeded = filter.isNeeded();
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (int i = 0; i < hertz.length; i++) {
      double factor = factor(hertz[i]);
      re[i] *= factor;
      im[i] *= factor;
    }
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    // It has none.
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    if (!isNeeded) {
      return;
    }
    for (int i = 0; i < hertz.length; i++) {
      double slope =
          radiansPerHertz
              * (density(radiansPerHertz * (cutoffHertz + hertz[i]))
                  - density(radiansPerHertz * (cutoffHertz - hertz[i])));
      double factor =
          integral(radiansPerHertz * (cutoffHertz - hertz[i]))
              + integral(radiansPerHertz * (cutoffHertz + hertz[i]));
      if (factor != 0) {
        re[i] += slope / factor / (2 * Math.PI);
      }
    }
  }

  private double factor(double hertz) {
    if (!isNeeded) {
      return 1;
    }
    double atZero = 2 * integral(radiansPerHertz * cutoffHertz);
    return (integral(radiansPerHertz * (cutoffHertz - hertz))
            + integral(radiansPerHertz * (cutoffHertz + hertz)))
        / atZero;
  }

  private double density(double x) {
    double square = shape * shape - x * x;
    double root = Math.sqrt(Math.abs(square));
    if (root < 1e-6) {
      return heightOfWindow;
    }
    return heightOfWindow * (square > 0 ? Math.sinh(root) : Math.sin(root)) / root;
  }

  /** The integral of the density from 0 to x; a half at infinity. */
  private double integral(double x) {
    double to = Math.abs(x);
    double[] table = table();
    int last = table.length - 1;
    double size;
    if (to < last * STEP) {
      int at = (int) (to / STEP);
      double t = to / STEP - at;
      // Hermite's cubic, through both values with both slopes.
      double rise = table[at + 1] - table[at];
      double first = STEP * density(at * STEP);
      double second = STEP * density((at + 1) * STEP);
      size =
          table[at]
              + t * first
              + t * t * (3 * rise - 2 * first - second)
              + t * t * t * (first + second - 2 * rise);
    } else {
      size = 0.5 - heightOfWindow * Math.cos(Math.sqrt(to * to - shape * shape)) / to;
    }
    return x < 0 ? -size : size;
  }

  private double[] table() {
    double[] known = integral;
    if (known == null) {
      known = new double[(int) Math.ceil((shape + OSCILLATIONS) / STEP) + 1];
      for (int i = 1; i < known.length; i++) {
        // Gauss's rule of three points.
        double middle = (i - 0.5) * STEP;
        double aside = STEP / 2 * Math.sqrt(0.6);
        known[i] =
            known[i - 1]
                + STEP
                    / 18
                    * (5 * density(middle - aside)
                        + 8 * density(middle)
                        + 5 * density(middle + aside));
      }
      integral = known;
    }
    return known;
  }

  @Override
  public double boundDecibels() {
    // The ripple is smallest for most attenuation; 60 dB is the least of it.
    return 0.01;
  }
}
