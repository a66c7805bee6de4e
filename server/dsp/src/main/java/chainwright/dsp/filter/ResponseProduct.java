package chainwright.dsp.filter;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Responses one after the other: factors multiply, decibels, phases and group delays add.
 *
 * @param parts the responses in order; none changes nothing
 */
public record ResponseProduct(List<Response> parts) implements Response {

  /**
   * Copies the list.
   *
   * @param parts the responses in order
   */
  public ResponseProduct {
    parts = List.copyOf(parts);
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (Response part : parts) {
      part.multiply(hertz, re, im);
    }
  }

  @Override
  public double boundDecibels() {
    double sum = 0;
    for (Response part : parts) {
      sum += part.boundDecibels();
    }
    return sum;
  }

  @Override
  public DoubleStream narrowHertz() {
    return parts.stream().flatMapToDouble(Response::narrowHertz);
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    for (Response part : parts) {
      part.addPhase(hertz, radians);
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    for (Response part : parts) {
      part.addLogarithmicDerivative(hertz, re, im);
    }
  }
}
