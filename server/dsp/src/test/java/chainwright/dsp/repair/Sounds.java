package chainwright.dsp.repair;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.Arrays;
import java.util.Random;

/** Signals of these tests, and what processors make of them. */
final class Sounds {

  static final double RATE_HZ = 48_000;

  private Sounds() {}

  /** Returns Gaussian noise of a level [dB]. */
  static double[] noise(int frames, double levelDb, long seed) {
    Random random = new Random(seed);
    double deviation = Math.pow(10, levelDb / 20);
    return random.doubles(frames).map(x -> deviation * random.nextGaussian()).toArray();
  }

  /**
   * Returns syllables of a voice: pulses of 120 Hz, whose pitch sways, through three resonances
   * (600, 1100 and 2500 Hz), 0.25 s of each 0.4 s, with soft ends; their RMS is near -20 dB.
   */
  static double[] syllables(int frames) {
    double[] pulses = new double[frames];
    double phase = 0;
    for (int i = 0; i < frames; i++) {
      double seconds = i / RATE_HZ;
      double place = seconds % 0.4;
      double envelope = place < 0.25 ? Math.pow(Math.sin(Math.PI * place / 0.25), 0.5) : 0;
      phase += 120 * (1 + 0.05 * Math.sin(2 * Math.PI * 0.9 * seconds)) / RATE_HZ;
      if (phase >= 1) {
        phase -= 1;
        pulses[i] = envelope;
      }
    }
    double[] voice = pulses;
    for (double hertz : new double[] {600, 1100, 2500}) {
      double radius = Math.exp(-Math.PI * 90 / RATE_HZ);
      double a1 = -2 * radius * Math.cos(2 * Math.PI * hertz / RATE_HZ);
      double a2 = radius * radius;
      double[] out = new double[frames];
      for (int i = 0; i < frames; i++) {
        double y1 = i > 0 ? out[i - 1] : 0;
        double y2 = i > 1 ? out[i - 2] : 0;
        out[i] = (1 + a1 + a2) * voice[i] - a1 * y1 - a2 * y2;
      }
      voice = out;
    }
    double factor = Math.pow(10, -20 / 20.0) / Math.sqrt(power(voice, 0, frames));
    return Arrays.stream(voice).map(x -> factor * x).toArray();
  }

  static double[] sum(double[] a, double[] b) {
    double[] sum = a.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += b[i];
    }
    return sum;
  }

  static double power(double[] signal, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += signal[i] * signal[i];
    }
    return sum / (to - from);
  }

  /** Returns the power of the difference of two signals against that of the first [dB]. */
  static double errorDb(double[] wanted, double[] found, int from, int to) {
    double error = 0;
    for (int i = from; i < to; i++) {
      error += (found[i] - wanted[i]) * (found[i] - wanted[i]);
    }
    return 10 * Math.log10(error / (to - from) / power(wanted, from, to));
  }

  /** Returns what a processor makes of channels, in time with them. */
  static double[][] render(ProcessorDesign design, double[]... signal) {
    return render(design.newProcessor(Wiring.ofChannels(signal.length)), design, 4096, signal);
  }

  /** Returns the same in blocks of a size. */
  static double[][] render(
      Processor processor, ProcessorDesign design, int block, double[]... signal) {
    int late = design.latencyFrames();
    int frames = signal[0].length;
    double[][] out =
        Arrays.stream(signal)
            .map(channel -> Arrays.copyOf(channel, frames + late))
            .toArray(double[][]::new);
    for (int from = 0; from < frames + late; from += block) {
      processor.process(out, from, Math.min(frames + late, from + block));
    }
    return Arrays.stream(out)
        .map(channel -> Arrays.copyOfRange(channel, late, late + frames))
        .toArray(double[][]::new);
  }
}
