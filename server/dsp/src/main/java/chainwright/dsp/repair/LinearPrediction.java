package chainwright.dsp.repair;

import java.util.Arrays;

/**
 * A signal seen as noise that went through poles alone: each sample is predicted from those before
 * it, e[n] = Σ a[k] x[n−k] with a[0] = 1 is what is new in it.
 *
 * <p>The coefficients come from the autocorrelation under a Hann window by the recursion of
 * Levinson and Durbin. Source: J. Makhoul, "Linear Prediction: A Tutorial Review", Proceedings of
 * the IEEE 63(4), 1975; from memory.
 */
final class LinearPrediction {

  /** Noise 90 dB below the signal, so that a pure tone has coefficients, too; ours. */
  private static final double WHITENING = 1e-9;

  private final int order;
  private final double[] window;
  private final double[] windowed;
  private final double[] correlation;
  private final double[] coefficients;
  private final double[] previous;

  LinearPrediction(int order, int frameLength) {
    this.order = order;
    window = new double[frameLength];
    for (int i = 0; i < frameLength; i++) {
      window[i] = Math.pow(Math.sin(Math.PI * (i + 0.5) / frameLength), 2);
    }
    windowed = new double[frameLength];
    correlation = new double[order + 1];
    coefficients = new double[order + 1];
    previous = new double[order + 1];
  }

  /** Returns a[0] = 1 to a[order], not to be changed. */
  double[] coefficients() {
    return coefficients;
  }

  /** Fits the coefficients to a frame; returns whether there is anything in it. */
  boolean fit(double[] frame) {
    for (int i = 0; i < frame.length; i++) {
      windowed[i] = window[i] * frame[i];
    }
    for (int lag = 0; lag <= order; lag++) {
      double sum = 0;
      for (int i = lag; i < frame.length; i++) {
        sum += windowed[i] * windowed[i - lag];
      }
      correlation[lag] = sum;
    }
    // The square of what is smaller is no normal number.
    if (!(correlation[0] > 1e-280)) {
      return false;
    }
    correlation[0] *= 1 + WHITENING;
    recur();
    return true;
  }

  private void recur() {
    coefficients[0] = 1;
    double error = correlation[0];
    for (int m = 1; m <= order; m++) {
      double sum = correlation[m];
      for (int k = 1; k < m; k++) {
        sum += coefficients[k] * correlation[m - k];
      }
      double reflection = -sum / error;
      System.arraycopy(coefficients, 0, previous, 0, m);
      for (int k = 1; k < m; k++) {
        coefficients[k] = previous[k] + reflection * previous[m - k];
      }
      coefficients[m] = reflection;
      error *= 1 - reflection * reflection;
    }
  }

  /** Finds |e[n]| of each sample by those before it; 0 where not all of them are there. */
  void forwardErrors(double[] frame, double[] errors) {
    Arrays.fill(errors, 0, order, 0);
    for (int n = order; n < frame.length; n++) {
      double sum = 0;
      for (int k = 0; k <= order; k++) {
        sum += coefficients[k] * frame[n - k];
      }
      errors[n] = Math.abs(sum);
    }
  }

  /** Returns |e| of one sample by those after it. */
  double backwardError(double[] frame, int n) {
    double sum = 0;
    for (int k = 0; k <= order; k++) {
      sum += coefficients[k] * frame[n + k];
    }
    return Math.abs(sum);
  }
}
