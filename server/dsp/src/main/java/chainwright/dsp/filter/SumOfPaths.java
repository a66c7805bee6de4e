package chainwright.dsp.filter;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Responses side by side, of which each gets the same signal and whose outputs are added with their
 * phases.
 *
 * <p>Where the paths cancel wholly the magnitude is negative infinity [dB] and the group delay NaN.
 *
 * @param paths the responses, at least one
 */
public record SumOfPaths(List<Response> paths) implements Response {

  /**
   * Copies the list.
   *
   * @param paths the responses
   * @throws IllegalArgumentException if there is none
   */
  public SumOfPaths {
    if (paths.isEmpty()) {
      throw new IllegalArgumentException("a sum must have at least one path");
    }
    paths = List.copyOf(paths);
  }

  @Override
  public DoubleStream narrowHertz() {
    return paths.stream().flatMapToDouble(Response::narrowHertz);
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    double[] sumRe = new double[hertz.length];
    double[] sumIm = new double[hertz.length];
    addUp(hertz, sumRe, sumIm);
    for (int i = 0; i < hertz.length; i++) {
      double old = re[i];
      re[i] = old * sumRe[i] - im[i] * sumIm[i];
      im[i] = old * sumIm[i] + im[i] * sumRe[i];
    }
  }

  /**
   * Adds the phase, which follows that of the first path; what the others turn it by is unwrapped
   * from each frequency to the next, so these must rise and be close where paths nearly cancel.
   *
   * @param hertz the frequencies [Hz], rising
   * @param radians the phases [rad], added to
   */
  @Override
  public void addPhase(double[] hertz, double[] radians) {
    int n = hertz.length;
    double[] sumRe = new double[n];
    double[] sumIm = new double[n];
    addUp(hertz, sumRe, sumIm);
    double[] first = paths.get(0).toPhase(hertz);
    double before = 0;
    for (int i = 0; i < n; i++) {
      double turn = Math.IEEEremainder(Math.atan2(sumIm[i], sumRe[i]) - first[i], 2 * Math.PI);
      before += Math.IEEEremainder(turn - before, 2 * Math.PI);
      radians[i] += first[i] + before;
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    int n = hertz.length;
    double[] valueRe = new double[n];
    double[] valueIm = new double[n];
    double[] slopeRe = new double[n];
    double[] slopeIm = new double[n];
    double[] sumRe = new double[n];
    double[] sumIm = new double[n];
    double[] sumSlopeRe = new double[n];
    double[] sumSlopeIm = new double[n];
    for (Response path : paths) {
      path.evaluate(hertz, valueRe, valueIm);
      Arrays.fill(slopeRe, 0);
      Arrays.fill(slopeIm, 0);
      path.addLogarithmicDerivative(hertz, slopeRe, slopeIm);
      for (int i = 0; i < n; i++) {
        sumRe[i] += valueRe[i];
        sumIm[i] += valueIm[i];
        sumSlopeRe[i] += valueRe[i] * slopeRe[i] - valueIm[i] * slopeIm[i];
        sumSlopeIm[i] += valueRe[i] * slopeIm[i] + valueIm[i] * slopeRe[i];
      }
    }
    for (int i = 0; i < n; i++) {
      re[i] += LogarithmicDerivative.real(sumRe[i], sumIm[i], sumSlopeRe[i], sumSlopeIm[i]);
      im[i] += LogarithmicDerivative.imaginary(sumRe[i], sumIm[i], sumSlopeRe[i], sumSlopeIm[i]);
    }
  }

  private void addUp(double[] hertz, double[] sumRe, double[] sumIm) {
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    for (Response path : paths) {
      path.evaluate(hertz, re, im);
      for (int i = 0; i < hertz.length; i++) {
        sumRe[i] += re[i];
        sumIm[i] += im[i];
      }
    }
  }
}
