package chainwright.app.demo;

/**
 * A resonance of second order with a gain of 1 at 0 Hz, as a formant is made.
 *
 * <p>Source: D. H. Klatt, "Software for a cascade/parallel formant synthesizer", JASA 67(3), 1980,
 * eqs. 1 and 2 (from memory).
 */
final class Resonator {

  private final double sampleRateHz;
  private double a;
  private double b;
  private double c;
  private double first;
  private double second;

  Resonator(double sampleRateHz) {
    this.sampleRateHz = sampleRateHz;
  }

  static Resonator of(double sampleRateHz, double centreHz, double bandwidthHz) {
    Resonator resonator = new Resonator(sampleRateHz);
    resonator.tune(centreHz, bandwidthHz);
    return resonator;
  }

  void tune(double centreHz, double bandwidthHz) {
    double radius = Math.exp(-Math.PI * bandwidthHz / sampleRateHz);
    c = -radius * radius;
    b = 2 * radius * Math.cos(2 * Math.PI * centreHz / sampleRateHz);
    a = 1 - b - c;
  }

  double process(double sample) {
    double out = a * sample + b * first + c * second;
    second = first;
    first = out;
    return out;
  }
}
