package chainwright.bench;

import chainwright.dsp.loudness.ChannelPosition;
import chainwright.dsp.loudness.LoudnessMeter;
import chainwright.dsp.loudness.TruePeakMeter;
import chainwright.dsp.loudness.TruePeakReading;
import chainwright.quantity.SampleRate;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * The meters beside libebur128, in turns on the same samples; {@code server/bench/peers/loudness}
 * starts it.
 *
 * <p>Times are processor time of the measuring thread, so that other work on the machine counts
 * little.
 */
public final class LoudnessRace {

  private static final SampleRate RATE = SampleRate.ofHertz(48_000);
  private static final int SECONDS = 60;
  private static final int BLOCK = 4800;
  private static final int WARM_UP_ROUNDS = 5;

  private final Path folder;
  private final int rounds;
  private final PrintStream out;

  private LoudnessRace(Path folder, int rounds, PrintStream out) {
    this.folder = folder;
    this.rounds = rounds;
    this.out = out;
  }

  /**
   * Runs all races.
   *
   * @param arguments the folder with the other library's driver, and the number of rounds
   * @throws IOException if the driver cannot be run
   */
  public static void main(String... arguments) throws IOException {
    LoudnessRace race =
        new LoudnessRace(Path.of(arguments[0]), Integer.parseInt(arguments[1]), System.out);
    race.out.printf(
        "%d rounds, %d s stereo at 48 kHz; processor time a second of audio [ms]: median (least to"
            + " most)%n%n",
        race.rounds, SECONDS);
    race.out.printf(
        "%-12s %-10s %-22s %-22s %6s %21s%n",
        "reading", "signal", "chainwright", "libebur128", "ratio", "readings");
    race.run("programme", programme());
    race.run("noise", noise());
  }

  /** Phrases of noise whose level wanders, with pauses, like speech or music that was mixed. */
  private static double[][] programme() {
    Random random = new Random(1);
    double[][] signal = new double[2][SECONDS * (int) RATE.hertz()];
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

  /** Steady noise: no stretch is low enough to be left out. */
  private static double[][] noise() {
    Random random = new Random(2);
    double[][] signal = new double[2][SECONDS * (int) RATE.hertz()];
    for (double[] channel : signal) {
      for (int n = 0; n < channel.length; n++) {
        channel[n] = random.nextDouble() - 0.5;
      }
    }
    return signal;
  }

  private void run(String name, double[][] signal) throws IOException {
    Path file = folder.resolve(name + ".raw");
    write(file, signal);
    Process driver =
        new ProcessBuilder(folder.resolve("driver").toString(), file.toString(), "2", "48000")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedWriter to =
            new BufferedWriter(
                new OutputStreamWriter(driver.getOutputStream(), StandardCharsets.UTF_8));
        BufferedReader from =
            new BufferedReader(
                new InputStreamReader(driver.getInputStream(), StandardCharsets.UTF_8))) {
      race("integrated", name, signal, to, from);
      race("true-peak", name, signal, to, from);
    }
  }

  private void race(
      String what, String name, double[][] signal, BufferedWriter to, BufferedReader from)
      throws IOException {
    double[] ours = new double[rounds];
    double[] theirs = new double[rounds];
    double reading = 0;
    double other = 0;
    for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
      long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      reading = what.equals("integrated") ? integrated(signal) : truePeak(signal);
      long end = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      to.write(what + "\n");
      to.flush();
      String line = from.readLine();
      if (line == null) {
        throw new IOException("the driver of libebur128 ended early");
      }
      String[] answer = line.split(" ", -1);
      other = Double.parseDouble(answer[1]);
      if (round >= 0) {
        ours[round] = (end - start) / 1e6 / SECONDS;
        theirs[round] = Long.parseLong(answer[0]) / 1e6 / SECONDS;
      }
    }
    Arrays.sort(ours);
    Arrays.sort(theirs);
    out.printf(
        Locale.ROOT,
        "%-12s %-10s %-22s %-22s %5.2fx %10.4f %10.4f%n",
        what,
        name,
        spread(ours),
        spread(theirs),
        theirs[rounds / 2] / ours[rounds / 2],
        reading,
        other);
  }

  private static String spread(double[] sorted) {
    return String.format(
        Locale.ROOT,
        "%.3f (%.3f to %.3f)",
        sorted[sorted.length / 2],
        sorted[0],
        sorted[sorted.length - 1]);
  }

  private static double integrated(double[][] signal) {
    LoudnessMeter meter = new LoudnessMeter(RATE, ChannelPosition.usual(signal.length));
    for (int from = 0; from < signal[0].length; from += BLOCK) {
      meter.process(signal, from, Math.min(BLOCK, signal[0].length - from));
    }
    return meter.measure().integratedLufs();
  }

  private static double truePeak(double[][] signal) {
    TruePeakMeter meter = TruePeakMeter.ofAnnex2(signal.length);
    for (int from = 0; from < signal[0].length; from += BLOCK) {
      meter.process(signal, from, Math.min(BLOCK, signal[0].length - from));
    }
    return meter.measure().stream().mapToDouble(TruePeakReading::annex2Dbtp).max().orElseThrow();
  }

  private static void write(Path file, double[][] signal) throws IOException {
    ByteBuffer bytes =
        ByteBuffer.allocate(signal.length * signal[0].length * Double.BYTES)
            .order(ByteOrder.nativeOrder());
    for (int n = 0; n < signal[0].length; n++) {
      for (double[] channel : signal) {
        bytes.putDouble(channel[n]);
      }
    }
    Files.write(file, bytes.array());
  }
}
