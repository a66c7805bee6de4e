package chainwright.dsp.loudness;

import java.util.Arrays;

/** Signals to be measured, [channel][sample]. */
final class TestSignal {

  private TestSignal() {}

  /** A stretch of a signal: its length, and its peak level; negative infinity is silence. */
  record Segment(double seconds, double peakDbfs) {}

  static Segment segment(double seconds, double peakDbfs) {
    return new Segment(seconds, peakDbfs);
  }

  /** How loud each sample is; segments end at the sample nearest to their time. */
  static double[] envelope(double rateHz, Segment... segments) {
    double total = Arrays.stream(segments).mapToDouble(Segment::seconds).sum();
    double[] envelope = new double[(int) Math.round(total * rateHz)];
    double end = 0;
    int from = 0;
    for (Segment segment : segments) {
      end += segment.seconds;
      int to = (int) Math.round(end * rateHz);
      Arrays.fill(envelope, from, to, factor(segment.peakDbfs));
      from = to;
    }
    return envelope;
  }

  static double[] sine(double rateHz, double hertz, double[] envelope) {
    double[] samples = new double[envelope.length];
    for (int n = 0; n < samples.length; n++) {
      samples[n] = envelope[n] * Math.sin(2 * Math.PI * hertz * n / rateHz);
    }
    return samples;
  }

  /** Uniform noise of a linear congruential generator modulo 2^32. */
  static double[] noise(long seed, double[] envelope) {
    double[] samples = new double[envelope.length];
    long state = seed;
    for (int n = 0; n < samples.length; n++) {
      state = 1_664_525 * state + 1_013_904_223 & 0xFFFF_FFFFL;
      samples[n] = envelope[n] * (state / 2147483648.0 - 1);
    }
    return samples;
  }

  /** A sine of a whole number of samples a period, faded in and out within 10 ms. */
  static double[] fadedTone(
      double rateHz, double division, double amplitude, double phaseDegrees, double seconds) {
    double[] samples = new double[(int) Math.round(seconds * rateHz)];
    double fade = Math.round(0.01 * rateHz);
    for (int n = 0; n < samples.length; n++) {
      double gain = Math.min(1, Math.min(n / fade, (samples.length - 1 - n) / fade));
      samples[n] =
          gain * amplitude * Math.sin(2 * Math.PI * n / division + Math.toRadians(phaseDegrees));
    }
    return samples;
  }

  static double[] scaled(double[] samples, double factor) {
    return Arrays.stream(samples).map(sample -> sample * factor).toArray();
  }

  static double[][] twice(double[] samples) {
    return new double[][] {samples, samples};
  }

  static double factor(double decibels) {
    return Math.pow(10, decibels / 20);
  }
}
