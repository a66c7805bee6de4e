package chainwright.bench;

import chainwright.dsp.filter.FilterDesign;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.Wiring;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Ten second-order sections beside another library's, in turns on the same samples, and the chain
 * of a vocal on its own; {@code server/bench/peers/filters} starts it.
 *
 * <p>Times are processor time of the thread that processes. Both sides put out new arrays.
 */
public final class ChainRace {

  private static final int SECONDS = 60;
  private static final int BLOCK = 4096;
  private static final int WARM_UP_ROUNDS = 5;

  private final Path folder;
  private final int rounds;
  private final PrintStream out;

  private ChainRace(Path folder, int rounds, PrintStream out) {
    this.folder = folder;
    this.rounds = rounds;
    this.out = out;
  }

  /**
   * Runs the race.
   *
   * @param arguments a folder for the samples, the number of rounds, and the other library's
   *     command
   * @throws IOException if the other library cannot be run
   */
  public static void main(String... arguments) throws IOException {
    ChainRace race =
        new ChainRace(Path.of(arguments[0]), Integer.parseInt(arguments[1]), System.out);
    race.out.printf(
        "%d rounds, %d s stereo at 48 kHz; processor time a second of audio [ms]: median (least to"
            + " most)%n%n",
        race.rounds, SECONDS);
    race.tenSections(Stream.of(arguments).skip(2).toList());
    race.vocal();
  }

  private void tenSections(List<String> command) throws IOException {
    ProcessorDesign design = Chains.design(Chains.TEN_SECTIONS);
    double[][] signal = Signals.programme(SECONDS);
    Path file = folder.resolve("signal.raw");
    Signals.writePlanar(file, signal);
    Path sections = folder.resolve("sections.txt");
    Files.writeString(sections, sections(design));
    Path result = folder.resolve("result.raw");
    double[] ours = new double[rounds];
    double[] theirs = new double[rounds];
    double[][] processed = signal;
    try (Peer peer =
        Peer.start(
            Stream.concat(
                    command.stream(),
                    Stream.of(sections.toString(), file.toString(), result.toString()))
                .toArray(String[]::new))) {
      String name = String.join(" ", peer.ask("name"));
      for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
        long start = processorNanoseconds();
        processed = process(design, signal);
        long end = processorNanoseconds();
        long other = Long.parseLong(peer.ask("filter")[0]);
        if (round >= 0) {
          ours[round] = (end - start) / 1e6 / SECONDS;
          theirs[round] = other / 1e6 / SECONDS;
        }
      }
      peer.ask("write");
      out.printf(
          Locale.ROOT,
          "ten sections: chainwright %s, %s %s: %.2f times as fast; outputs differ by %.1e at most%n",
          Spread.of(ours),
          name,
          Spread.of(theirs),
          Spread.of(theirs).median() / Spread.of(ours).median(),
          difference(processed, result));
    }
  }

  private void vocal() {
    ProcessorDesign design = Chains.design(Chains.VOCAL);
    double[][] signal = Signals.programme(SECONDS);
    double[] times = new double[rounds];
    for (int round = -WARM_UP_ROUNDS; round < rounds; round++) {
      long start = processorNanoseconds();
      process(design, signal);
      long end = processorNanoseconds();
      if (round >= 0) {
        times[round] = (end - start) / 1e6 / SECONDS;
      }
    }
    Spread spread = Spread.of(times);
    out.printf(
        Locale.ROOT,
        "chain of a vocal, eight stages: chainwright %s: %.0f (%.0f to %.0f) times real time%n",
        spread,
        1000 / spread.median(),
        1000 / spread.most(),
        1000 / spread.least());
  }

  private static long processorNanoseconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double[][] process(ProcessorDesign design, double[][] signal) {
    Processor processor = design.newProcessor(Wiring.ofChannels(signal.length));
    double[][] copy = Stream.of(signal).map(double[]::clone).toArray(double[][]::new);
    for (int from = 0; from < copy[0].length; from += BLOCK) {
      processor.process(copy, from, Math.min(copy[0].length, from + BLOCK));
    }
    return copy;
  }

  /** Returns a line for each section: b0 b1 b2 1 a1 a2. */
  private static String sections(ProcessorDesign design) {
    return filters(design)
        .flatMap(filter -> filter.cascade().sections().stream())
        .map(
            section ->
                Stream.of(section.b0(), section.b1(), section.b2(), 1.0, section.a1(), section.a2())
                    .map(String::valueOf)
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static Stream<FilterDesign> filters(ProcessorDesign design) {
    if (design instanceof SeriesDesign series) {
      return series.parts().stream().flatMap(ChainRace::filters);
    }
    if (design instanceof FilterDesign filter && filter.cascade().gain() == 1) {
      return Stream.of(filter);
    }
    if (design.equals(new FactorDesign(1))) {
      return Stream.empty();
    }
    throw new IllegalArgumentException("the chain must be made of sections, but has " + design);
  }

  private static double difference(double[][] processed, Path result) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(result)).order(ByteOrder.nativeOrder());
    double largest = 0;
    for (double[] channel : processed) {
      for (double sample : channel) {
        largest = Math.max(largest, Math.abs(sample - bytes.getDouble()));
      }
    }
    return largest;
  }
}
