package chainwright.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** What is measured with: stereo at 48 kHz, [channel][frame], full scale 1.0. */
final class Signals {

  /** The sample rate [Hz]. */
  static final int RATE_HZ = 48_000;

  private Signals() {}

  /** Phrases of noise whose level wanders, with pauses, like speech or music that was mixed. */
  static double[][] programme(int seconds) {
    Random random = new Random(1);
    double[][] signal = new double[2][seconds * RATE_HZ];
    double level = 0;
    double wanted = 0;
    for (int n = 0; n < signal[0].length; n++) {
      if (n % 6000 == 0) {
        wanted = random.nextInt(5) == 0 ? 0.001 : 0.18 * Math.exp(0.5 * random.nextGaussian());
      }
      level += (wanted - level) / 2000;
      double common = random.nextGaussian();
      signal[0][n] = level * (common + 0.5 * random.nextGaussian()) / 2;
      signal[1][n] = level * (common + 0.5 * random.nextGaussian()) / 2;
    }
    return signal;
  }

  /** Steady noise, which gives a meter or a detector no rest. */
  static double[][] noise(int seconds) {
    Random random = new Random(2);
    double[][] signal = new double[2][seconds * RATE_HZ];
    for (double[] channel : signal) {
      for (int n = 0; n < channel.length; n++) {
        channel[n] = random.nextDouble() - 0.5;
      }
    }
    return signal;
  }

  /** Writes the samples frame by frame, doubles of this machine's byte order. */
  static void writeInterleaved(Path file, double[][] signal) throws IOException {
    ByteBuffer bytes = room(signal);
    for (int n = 0; n < signal[0].length; n++) {
      for (double[] channel : signal) {
        bytes.putDouble(channel[n]);
      }
    }
    Files.write(file, bytes.array());
  }

  /** Writes the samples channel by channel, doubles of this machine's byte order. */
  static void writePlanar(Path file, double[][] signal) throws IOException {
    ByteBuffer bytes = room(signal);
    for (double[] channel : signal) {
      for (double sample : channel) {
        bytes.putDouble(sample);
      }
    }
    Files.write(file, bytes.array());
  }

  private static ByteBuffer room(double[][] signal) {
    return ByteBuffer.allocate(signal.length * signal[0].length * Double.BYTES)
        .order(ByteOrder.nativeOrder());
  }
}
