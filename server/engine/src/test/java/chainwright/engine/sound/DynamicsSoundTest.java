package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.dynamics.StepResponse;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import chainwright.engine.stage.StageSound;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is rendered of dynamics is what their plots show: the static curve and the step. */
class DynamicsSoundTest {

  private static final double RATE_HZ = 48_000;

  private static final double BOUND_DB = 1e-9;

  @ParameterizedTest
  @CsvSource({
    "compressor threshold -20 dBFS ratio 3:1, -60",
    "compressor threshold -20 dBFS ratio 3:1, -18",
    "compressor threshold -20 dBFS ratio 3:1, -3",
    "compressor threshold -20 dBFS ratio 4:1 knee 0 dB make-up 3 dB, -6",
    "compressor threshold -20 dBFS ratio 4:1 detector programme, -6",
    "expander threshold -40 dBFS ratio 2:1 range 12 dB, -43",
    "expander threshold -40 dBFS ratio 2:1 range 12 dB, -70",
    "gate threshold -40 dBFS range 30 dB, -60",
    "gate threshold -40 dBFS range 30 dB, -20",
    "limiter ceiling -1 dBFS, 0",
    "limiter ceiling -1 dBFS, -3",
    "true-peak-limiter ceiling -1 dBTP, 0",
    "true-peak-limiter ceiling -1 dBTP, -3",
  })
  void stage_steadyLevel_isOnItsCurve(String line, double levelDb) {
    StageSound sound = WrittenChain.soundOf(line);
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(line));
    boolean isRms = line.contains("programme");
    double[][] signal = new double[2][(int) (12 * RATE_HZ)];
    for (double[] channel : signal) {
      fill(channel, 0, channel.length, isRms ? levelDb - 10 * Math.log10(2) : levelDb);
    }
    double before = Math.abs(signal[0][0]);
    design.newProcessor(Wiring.ofChannels(2)).process(signal, 0, signal[0].length);
    int last = signal[0].length - 1;
    double gainDb = 20 * Math.log10(Math.abs(signal[0][last]) / before);
    assertThat(levelDb + gainDb)
        .isCloseTo(sound.curve().orElseThrow().outputDb(levelDb), within(BOUND_DB));
    assertThat(signal[1]).isEqualTo(signal[0]);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "compressor threshold -30 dBFS ratio 3:1 attack 5 ms release 60 ms",
        "compressor threshold -30 dBFS ratio 8:1 attack 0.1 ms release 200 ms knee 0 dB",
        "gate threshold -30 dBFS range 20 dB attack 1 ms hold 20 ms release 50 ms",
        "expander threshold -30 dBFS ratio 2:1 range 10 dB attack 2 ms release 80 ms",
      })
  void stage_stepOfLevel_movesAsItsStepShows(String line) {
    StageSound sound = WrittenChain.soundOf(line);
    StepResponse.Step step = new StepResponse.Step(-50, -10, 0.1, 0.2);
    StepResponse expected =
        sound.compressor().isPresent()
            ? StepResponse.analyze(sound.compressor().orElseThrow(), step, RATE_HZ)
            : StepResponse.analyze(sound.gate().orElseThrow(), step, RATE_HZ);
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(line));
    int settled = (int) (5 * RATE_HZ);
    int late = design.latencyFrames();
    double[] channel = new double[settled + expected.size() + late];
    int up = settled + expected.releaseIndex();
    fill(channel, 0, settled, -50);
    fill(channel, settled, up, -10);
    fill(channel, up, channel.length, -50);
    double[] before = channel.clone();
    design.newProcessor(Wiring.ofChannels(1)).process(new double[][] {channel}, 0, channel.length);
    for (int i = 0; i < expected.size() - late; i++) {
      int at = settled + i;
      double gainDb = 20 * Math.log10(Math.abs(channel[at] / before[at - late]));
      assertThat(gainDb).as("frame %d", i).isCloseTo(expected.gainDb(i), within(1e-6));
    }
  }

  /** Samples of one magnitude, in which a detector of peaks reads the level at once. */
  private static void fill(double[] channel, int from, int to, double levelDb) {
    double magnitude = Math.pow(10, levelDb / 20);
    for (int i = from; i < to; i++) {
      channel[i] = i % 2 == 0 ? magnitude : -magnitude;
    }
  }
}
