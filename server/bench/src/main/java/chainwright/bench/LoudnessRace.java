package chainwright.bench;

import chainwright.dsp.loudness.ChannelPosition;
import chainwright.dsp.loudness.LoudnessMeter;
import chainwright.dsp.loudness.TruePeakMeter;
import chainwright.dsp.loudness.TruePeakReading;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;

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
    race.run("programme", Signals.programme(SECONDS));
    race.run("noise", Signals.noise(SECONDS));
  }

  private void run(String name, double[][] signal) throws IOException {
    Path file = folder.resolve(name + ".raw");
    Signals.writeInterleaved(file, signal);
    try (Peer peer =
        Peer.start(folder.resolve("driver").toString(), file.toString(), "2", "48000")) {
      race("integrated", name, signal, peer);
      race("true-peak", name, signal, peer);
    }
  }

  private void race(String what, String name, double[][] signal, Peer peer) throws IOException {
    double[] ours = new double[rounds];
    double[] theirs = new double[rounds];
    double reading = 0;
    double other = 0;
    for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
      long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      reading = what.equals("integrated") ? integrated(signal) : truePeak(signal);
      long end = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      String[] answer = peer.ask(what);
      other = Double.parseDouble(answer[1]);
      if (round >= 0) {
        ours[round] = (end - start) / 1e6 / SECONDS;
        theirs[round] = Long.parseLong(answer[0]) / 1e6 / SECONDS;
      }
    }
    out.printf(
        Locale.ROOT,
        "%-12s %-10s %-22s %-22s %5.2fx %10.4f %10.4f%n",
        what,
        name,
        Spread.of(ours),
        Spread.of(theirs),
        Spread.of(theirs).median() / Spread.of(ours).median(),
        reading,
        other);
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
}
