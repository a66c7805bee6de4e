package chainwright.dsp.filter;

import chainwright.quantity.TimeSpan;

/**
 * A delay that is the same at every frequency and changes no level.
 *
 * @param delay the delay [s]; below 0 looks ahead
 */
public record PureDelay(TimeSpan delay) implements Response {

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (int i = 0; i < hertz.length; i++) {
      double angle = -2 * Math.PI * hertz[i] * delay.seconds();
      double cos = Math.cos(angle);
      double sin = Math.sin(angle);
      double old = re[i];
      re[i] = old * cos - im[i] * sin;
      im[i] = old * sin + im[i] * cos;
    }
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    for (int i = 0; i < hertz.length; i++) {
      radians[i] -= 2 * Math.PI * hertz[i] * delay.seconds();
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    for (int i = 0; i < hertz.length; i++) {
      im[i] -= delay.seconds();
    }
  }
}
