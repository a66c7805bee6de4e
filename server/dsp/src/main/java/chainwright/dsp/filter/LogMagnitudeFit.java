package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import java.util.Arrays;

/**
 * Moves the logarithms of a section's coefficients until its magnitude [dB] differs least from the
 * prototype's, in the sense of squares, over a set of frequencies; then again with the gain at one
 * frequency held exactly.
 *
 * <p>Source: D. W. Marquardt, "An Algorithm for Least-Squares Estimation of Nonlinear Parameters",
 * J. SIAM 11(2), 1963; the held gain is a Lagrange multiplier in the same normal equations.
 */
final class LogMagnitudeFit {

  private static final int STEPS = 6;
  private static final int TRIES = 6;
  private static final double FIRST_DAMPING = 1e-3;
  private static final double LEAST_DAMPING = 1e-9;
  private static final double LONGEST_STEP = 2;
  private static final double SETTLED = 1e-7;

  private static final int HELD_STEPS = 4;
  private static final double HELD_DAMPING = 0.1;
  private static final double LONGEST_HELD_STEP = 0.5;

  /** How far the last correction may move a coefficient that it should hardly touch. */
  private static final double LARGEST_CORRECTION = 1.5;

  /** Coefficients u, t, v of numerator and denominator, in {@code s = j tan(w/2)}. */
  private final double[] c;

  /** Indices into c of the coefficients that may move. */
  private final int[] free;

  private final double[] tanSquared;
  private final double[] target;
  private final int points;
  private final boolean held;

  /*
   * A filter has to be designed in some twenty microseconds by code that is hardly compiled, so the
   * slopes stand in columns, one a coefficient, and what is summed stays in local variables.
   */

  private double[] residual;
  private double[][] slope;
  private double[] nextResidual;
  private double[][] nextSlope;

  LogMagnitudeFit(
      double[] coefficients,
      boolean[] isFree,
      MatchPoints grid,
      AnalogueSection prototype,
      SampleRate rate) {
    c = coefficients;
    free = indices(isFree);
    points = grid.size();
    held = grid.pinnedHertz() > 0;
    int rows = points + (held ? 1 : 0);
    tanSquared = new double[rows];
    target = new double[rows];
    for (int i = 0; i < rows; i++) {
      double hertz = i < points ? grid.hertz(i) : grid.pinnedHertz();
      double tan = Math.tan(Math.PI * hertz / rate.hertz());
      tanSquared[i] = tan * tan;
      target[i] = prototype.magnitudeSquaredAt(hertz);
    }
    residual = new double[rows];
    nextResidual = new double[rows];
    slope = new double[free.length][rows];
    nextSlope = new double[free.length][rows];
  }

  private static int[] indices(boolean[] isFree) {
    int[] indices = new int[isFree.length];
    int count = 0;
    for (int i = 0; i < isFree.length; i++) {
      if (isFree[i]) {
        indices[count++] = i;
      }
    }
    return Arrays.copyOf(indices, count);
  }

  void run() {
    fitFreely();
    if (held) {
      fitHeld();
      correctHeldGain();
    }
  }

  private void fitFreely() {
    double damping = FIRST_DAMPING;
    double[] before = new double[c.length];
    double error = evaluate(residual, slope);
    for (int step = 0; step < STEPS; step++) {
      double[][] normal = normalEquations(0);
      boolean better = false;
      double nextError = error;
      for (int attempt = 0; attempt < TRIES && !better; attempt++) {
        System.arraycopy(c, 0, before, 0, c.length);
        move(LinearSystem.solve(damped(normal, damping)), LONGEST_STEP);
        nextError = evaluate(nextResidual, nextSlope);
        better = nextError <= error;
        if (better) {
          damping = Math.max(damping / 10, LEAST_DAMPING);
        } else {
          System.arraycopy(before, 0, c, 0, c.length);
          damping *= 10;
        }
      }
      if (!better) {
        return;
      }
      swap();
      if (error - nextError <= SETTLED * error) {
        return;
      }
      error = nextError;
    }
  }

  private void fitHeld() {
    for (int step = 0; step < HELD_STEPS; step++) {
      move(LinearSystem.solve(damped(normalEquations(1), HELD_DAMPING)), LONGEST_HELD_STEP);
      evaluate(residual, slope);
    }
  }

  /** Meets the held gain to rounding by the damping term of the denominator, the last to matter. */
  private void correctHeldGain() {
    double y = tanSquared[points];
    double numerator = square(c[0] - c[2] * y) + c[1] * c[1] * y;
    double wanted = (numerator / target[points] - square(c[3] - c[5] * y)) / y;
    double ratio = wanted / (c[4] * c[4]);
    if (ratio < LARGEST_CORRECTION && ratio > 1 / LARGEST_CORRECTION) {
      c[4] = Math.sqrt(wanted);
    }
  }

  private void swap() {
    double[] oldResidual = residual;
    residual = nextResidual;
    nextResidual = oldResidual;
    double[][] oldSlope = slope;
    slope = nextSlope;
    nextSlope = oldSlope;
  }

  /** Differences of the logarithms of the squared magnitude and their slopes; returns the error. */
  private double evaluate(double[] r, double[][] dr) {
    double[][] columns = new double[c.length][];
    for (int k = 0; k < free.length; k++) {
      columns[free[k]] = dr[k];
    }
    double[] dt = columns[1];
    double[] dv = columns[2];
    double[] dDamping = columns[4];
    double[] dSquare = columns[5];
    double sum = 0;
    for (int i = 0; i < r.length; i++) {
      double y = tanSquared[i];
      double nr = c[0] - c[2] * y;
      double dre = c[3] - c[5] * y;
      double n = nr * nr + c[1] * c[1] * y;
      double d = dre * dre + c[4] * c[4] * y;
      double difference = Math.log(n / (d * target[i]));
      r[i] = difference;
      if (dt != null) {
        dt[i] = 2 * c[1] * c[1] * y / n;
      }
      if (dv != null) {
        dv[i] = -2 * nr * c[2] * y / n;
      }
      if (dDamping != null) {
        dDamping[i] = -2 * c[4] * c[4] * y / d;
      }
      if (dSquare != null) {
        dSquare[i] = 2 * dre * c[5] * y / d;
      }
      if (i < points) {
        sum += difference * difference;
      }
    }
    return sum;
  }

  /** Normal equations with the right-hand side in the last column, bordered by the held gain. */
  private double[][] normalEquations(int border) {
    int n = free.length;
    int size = n + border;
    double[][] m = new double[size][size + 1];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b <= a; b++) {
        m[a][b] = product(slope[a], slope[b]);
        m[b][a] = m[a][b];
      }
      m[a][size] = -product(slope[a], residual);
    }
    if (border == 1) {
      for (int a = 0; a < n; a++) {
        m[a][n] = slope[a][points];
        m[n][a] = slope[a][points];
      }
      m[n][size] = -residual[points];
    }
    return m;
  }

  private double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < points; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private double[][] damped(double[][] normal, double damping) {
    double[][] m = new double[normal.length][];
    for (int a = 0; a < m.length; a++) {
      m[a] = normal[a].clone();
      if (a < free.length) {
        m[a][a] += damping * (m[a][a] + 1e-9);
      }
    }
    return m;
  }

  private void move(double[] step, double longest) {
    for (int k = 0; k < free.length; k++) {
      c[free[k]] *= Math.exp(Math.max(-longest, Math.min(longest, step[k])));
    }
  }

  private static double square(double x) {
    return x * x;
  }
}
