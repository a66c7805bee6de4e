package chainwright.dsp.filter;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * What an engineer means by a filter: an analogue response, valid at every frequency and free of
 * any sample rate.
 *
 * @param sections the sections in order, one after the other; none is a wire
 */
public record AnaloguePrototype(List<AnalogueSection> sections) implements Response {

  /**
   * Copies the list.
   *
   * @param sections the sections in order
   */
  public AnaloguePrototype {
    sections = List.copyOf(sections);
  }

  /**
   * Makes a prototype of one section.
   *
   * @param section the section
   * @return the prototype
   */
  public static AnaloguePrototype of(AnalogueSection section) {
    return new AnaloguePrototype(List.of(section));
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (AnalogueSection section : sections) {
      double corner = section.corner().hertz();
      for (int i = 0; i < hertz.length; i++) {
        double f = hertz[i] / corner;
        double nr = section.n0() - section.n2() * f * f;
        double ni = section.n1() * f;
        double dr = section.d0() - section.d2() * f * f;
        double di = section.d1() * f;
        double size = dr * dr + di * di;
        double hr = (nr * dr + ni * di) / size;
        double hi = (ni * dr - nr * di) / size;
        double old = re[i];
        re[i] = old * hr - im[i] * hi;
        im[i] = old * hi + im[i] * hr;
      }
    }
  }

  @Override
  public DoubleStream narrowHertz() {
    return sections.stream().flatMapToDouble(AnalogueSection::narrowHertz);
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    for (AnalogueSection section : sections) {
      double corner = section.corner().hertz();
      for (int i = 0; i < hertz.length; i++) {
        double f = hertz[i] / corner;
        radians[i] +=
            Math.atan2(section.n1() * f, section.n0() - section.n2() * f * f)
                - Math.atan2(section.d1() * f, section.d0() - section.d2() * f * f);
      }
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    for (AnalogueSection section : sections) {
      double corner = section.corner().hertz();
      double secondsPerUnit = 1 / (2 * Math.PI * corner);
      for (int i = 0; i < hertz.length; i++) {
        double f = hertz[i] / corner;
        double nr = section.n0() - section.n2() * f * f;
        double ni = section.n1() * f;
        if (nr == 0 && ni == 0) {
          f = Math.max(f * (1 + LogarithmicDerivative.NUDGE), LogarithmicDerivative.NUDGE);
          nr = section.n0() - section.n2() * f * f;
          ni = section.n1() * f;
        }
        double dr = section.d0() - section.d2() * f * f;
        double di = section.d1() * f;
        double nrSlope = -2 * section.n2() * f;
        double drSlope = -2 * section.d2() * f;
        re[i] +=
            secondsPerUnit
                * (LogarithmicDerivative.real(nr, ni, nrSlope, section.n1())
                    - LogarithmicDerivative.real(dr, di, drSlope, section.d1()));
        im[i] +=
            secondsPerUnit
                * (LogarithmicDerivative.imaginary(nr, ni, nrSlope, section.n1())
                    - LogarithmicDerivative.imaginary(dr, di, drSlope, section.d1()));
      }
    }
  }
}
