package chainwright.dsp.nonlinear;

import java.util.Arrays;

/**
 * The harmonics of any shaper, by Gauss-Legendre quadrature of the Fourier integral.
 *
 * <p>f(A sin θ) is symmetric about θ = π/2, so odd harmonics lie on the sine, even ones on the
 * cosine, and the half from −π/2 to π/2 holds everything. It is cut where the shaper has corners,
 * for between them quadrature converges exponentially, and each piece into panels that are doubled
 * until nothing changes.
 */
final class FourierIntegral {

  private static final int NODES = 16;
  private static final double[] NODE = new double[NODES];
  private static final double[] WEIGHT = new double[NODES];

  private static final int FIRST_PANELS = 2;
  private static final int MOST_PANELS = 1024;

  /** Relative to the largest harmonic; rounding alone leaves some 1e-15. */
  private static final double EXACT = 1e-13;

  /** Below this, relative to the largest harmonic, a change that does not shrink is rounding. */
  private static final double ROUNDING = 1e-7;

  static {
    for (int i = 0; i < NODES; i++) {
      placeNode(i);
    }
  }

  private FourierIntegral() {}

  static Harmonics harmonics(Shaper shaper, double peakAmplitude, int count) {
    Harmonics.requireSine(peakAmplitude, count);
    double[] edges = edges(shaper, peakAmplitude);
    // A panel must not hold more of the highest harmonic than its nodes can follow.
    int panels = Math.max(FIRST_PANELS, Integer.highestOneBit(Math.max(1, count / NODES)) * 2);
    double[] before = integrate(shaper, peakAmplitude, count, edges, panels);
    double lastChange = Double.POSITIVE_INFINITY;
    while (panels < MOST_PANELS) {
      panels *= 2;
      double[] after = integrate(shaper, peakAmplitude, count, edges, panels);
      double change = 0;
      double largest = 0;
      for (int n = 0; n <= count; n++) {
        change = Math.max(change, Math.abs(after[n] - before[n]));
        largest = Math.max(largest, Math.abs(after[n]));
      }
      before = after;
      if (change <= EXACT * largest || (change <= ROUNDING * largest && change > lastChange / 4)) {
        break;
      }
      lastChange = change;
    }
    double[] sines = new double[count + 1];
    double[] cosines = new double[count + 1];
    for (int n = 0; n <= count; n++) {
      (n % 2 == 0 ? cosines : sines)[n] = before[n];
    }
    return new Harmonics(sines, cosines);
  }

  private static double[] edges(Shaper shaper, double peakAmplitude) {
    double[] inside =
        shaper.corners().stream()
            .mapToDouble(corner -> corner / peakAmplitude)
            .filter(sine -> Math.abs(sine) < 1)
            .map(Math::asin)
            .toArray();
    double[] edges = new double[inside.length + 2];
    edges[0] = -Math.PI / 2;
    System.arraycopy(inside, 0, edges, 1, inside.length);
    edges[edges.length - 1] = Math.PI / 2;
    Arrays.sort(edges);
    return edges;
  }

  private static double[] integrate(
      Shaper shaper, double peakAmplitude, int count, double[] edges, int panels) {
    double[] sums = new double[count + 1];
    for (int e = 1; e < edges.length; e++) {
      double half = (edges[e] - edges[e - 1]) / (2 * panels);
      for (int panel = 0; panel < panels; panel++) {
        double middle = edges[e - 1] + half * (2 * panel + 1);
        for (int i = 0; i < NODES; i++) {
          double angle = middle + half * NODE[i];
          double sine = Math.sin(angle);
          addNode(sums, angle, sine, WEIGHT[i] * half * shaper.shape(peakAmplitude * sine));
        }
      }
    }
    sums[0] /= Math.PI;
    for (int n = 1; n <= count; n++) {
      sums[n] *= 2 / Math.PI;
    }
    return sums;
  }

  /**
   * Adds value · cos nθ for even n and value · sin nθ for odd n, by rotation from one to the next.
   */
  private static void addNode(double[] sums, double angle, double sine, double value) {
    double cosine = Math.cos(angle);
    double cn = 1;
    double sn = 0;
    for (int n = 0; n < sums.length; n++) {
      sums[n] += value * (n % 2 == 0 ? cn : sn);
      double next = cn * cosine - sn * sine;
      sn = sn * cosine + cn * sine;
      cn = next;
    }
  }

  /**
   * Finds a root of the Legendre polynomial by Newton's method.
   *
   * <p>Source: Abramowitz and Stegun, "Handbook of Mathematical Functions", 25.4.29 for the
   * weights.
   */
  private static void placeNode(int i) {
    double x = Math.cos(Math.PI * (i + 0.75) / (NODES + 0.5));
    double slope = 0;
    for (int step = 0; step < 20; step++) {
      double last = 1;
      double value = x;
      for (int k = 2; k <= NODES; k++) {
        double next = ((2 * k - 1) * x * value - (k - 1) * last) / k;
        last = value;
        value = next;
      }
      slope = NODES * (x * value - last) / (x * x - 1);
      x -= value / slope;
    }
    NODE[i] = x;
    WEIGHT[i] = 2 / ((1 - x * x) * slope * slope);
  }
}
