package chainwright.dsp.reverb;

import chainwright.dsp.filter.CascadeFilter;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import java.util.List;
import org.jspecify.annotations.NullMarked;

/** What is measured on the impulse response of a room. */
@NullMarked
final class RoomMeasures {

  /**
   * The share of a Gaussian noise that lies beyond its standard deviation: erfc(1/√2). Source: Abel
   * and Huang, "A Simple, Robust Measure of Reverberation Echo Density", AES 121st Convention,
   * 2006; from memory.
   */
  private static final double GAUSSIAN_SHARE = 0.3173;

  private RoomMeasures() {}

  /** Returns the response of all channels to an impulse in one, until the tail has ended. */
  static double[][] impulseResponse(ProcessorDesign design, int channelCount, int channel) {
    double[][] signal = new double[channelCount][design.tailFrames()];
    signal[channel][0] = 1;
    Processor processor = design.newProcessor(Wiring.ofChannels(channelCount));
    processor.process(signal, 0, signal[0].length);
    return signal;
  }

  /**
   * Returns the reverberation time [s] of an octave: the line through −5 to −35 dB of the squares
   * integrated backwards, summed over responses. Source: ISO 3382-1, T30; from memory.
   */
  static double octaveSeconds(List<double[]> responses, double centreHz, SampleRate rate) {
    double[] left = new double[responses.get(0).length];
    for (double[] response : responses) {
      double[] band = octave(response, centreHz, rate);
      double sum = 0;
      for (int i = band.length - 1; i >= 0; i--) {
        sum += band[i] * band[i];
        left[i] += sum;
      }
    }
    return framesOfDecay(left) / rate.hertz();
  }

  /** The time of a fall by 60 dB from the line through −5 to −35 dB [frames]. */
  private static double framesOfDecay(double[] left) {
    int from = 0;
    while (left[from] > left[0] * Math.pow(10, -0.5)) {
      from++;
    }
    int to = from;
    while (left[to] > left[0] * Math.pow(10, -3.5)) {
      to++;
    }
    return -60 / slopeDb(left, from, to);
  }

  /** Returns what times of decay give over an octave of even power, measured in the same way. */
  static double octaveSeconds(DecayTimes times, double centreHz) {
    double[] left = new double[4000];
    double step = times.secondsAt(centreHz) / 1000;
    for (double octaves = -0.49; octaves < 0.5; octaves += 0.02) {
      double hertz = centreHz * Math.pow(2, octaves);
      double seconds = times.secondsAt(hertz);
      for (int i = 0; i < left.length; i++) {
        left[i] += hertz * seconds * Math.pow(10, -6 * i * step / seconds);
      }
    }
    return framesOfDecay(left) * step;
  }

  /** The slope of the straight line through the levels by least squares [dB/frame]. */
  private static double slopeDb(double[] energy, int from, int to) {
    double middle = (from + to - 1) / 2.0;
    double products = 0;
    double squares = 0;
    for (int i = from; i < to; i++) {
      products += (i - middle) * 10 * Math.log10(energy[i]);
      squares += (i - middle) * (i - middle);
    }
    return products / squares;
  }

  static double[] octave(double[] response, double centreHz, SampleRate rate) {
    return band(response, centreHz / Math.sqrt(2), centreHz * Math.sqrt(2), rate);
  }

  /** Returns what of a response lies between two frequencies. */
  static double[] band(double[] response, double lowHz, double highHz, SampleRate rate) {
    double[] band = response.clone();
    for (var prototype :
        List.of(
            PassPrototypes.highPass(PassFamily.BUTTERWORTH, 8, Frequency.ofHertz(lowHz)),
            PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 8, Frequency.ofHertz(highHz)))) {
      new CascadeFilter(Curve.BILINEAR.design(prototype, rate), 1)
          .process(new double[][] {band}, 0, band.length);
    }
    return band;
  }

  /** Returns the normalised echo density in a window of 20 ms about a frame; 1 is Gaussian. */
  static double echoDensity(double[] response, int frame, SampleRate rate) {
    int half = (int) (0.01 * rate.hertz());
    double weights = 0;
    double power = 0;
    for (int i = -half; i <= half; i++) {
      weights += hann(i, half);
      power += hann(i, half) * response[frame + i] * response[frame + i];
    }
    double deviation = Math.sqrt(power / weights);
    double beyond = 0;
    for (int i = -half; i <= half; i++) {
      beyond += Math.abs(response[frame + i]) > deviation ? hann(i, half) : 0;
    }
    return beyond / weights / GAUSSIAN_SHARE;
  }

  private static double hann(int i, int half) {
    return 0.5 + 0.5 * Math.cos(Math.PI * i / half);
  }

  static double energy(double[] response, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += response[i] * response[i];
    }
    return sum;
  }

  static double correlation(double[] one, double[] other, int from) {
    double products = 0;
    for (int i = from; i < one.length; i++) {
      products += one[i] * other[i];
    }
    return products / Math.sqrt(energy(one, from, one.length) * energy(other, from, other.length));
  }
}
