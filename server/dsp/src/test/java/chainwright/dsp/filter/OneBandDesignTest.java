package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.LatencyDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Beside a split into three bands with wires in the outer ones, which it stands for. */
class OneBandDesignTest {

  private static final int FRAMES = 3000;

  @ParameterizedTest
  @CsvSource({"6, 0", "12, 0", "24, 0", "36, 7", "48, 700"})
  void band_ofAnySlopeAndLatency_soundsAsThreeBands(int slope, int latencyFrames) {
    ProcessorDesign processed =
        new SeriesDesign(List.of(new FactorDesign(0.25), new LatencyDesign(latencyFrames)));
    Crossover lower = crossover(5000, slope);
    Crossover upper = crossover(9000, slope);
    ProcessorDesign wire = new FactorDesign(1);
    ProcessorDesign one = new OneBandDesign(lower, upper, processed);
    ProcessorDesign three = new BandsDesign(List.of(lower, upper), List.of(wire, processed, wire));
    assertThat(one.latencyFrames()).isEqualTo(three.latencyFrames()).isEqualTo(latencyFrames);
    double[][] expected = noise();
    double[][] actual = noise();
    three.newProcessor(Wiring.ofChannels(2)).process(expected, 0, FRAMES);
    one.newProcessor(Wiring.ofChannels(2)).process(actual, 0, FRAMES);
    for (int c = 0; c < 2; c++) {
      assertThat(actual[c]).containsExactly(expected[c], within(1e-12));
    }
  }

  private static Crossover crossover(double hertz, int slope) {
    return Crossover.of(Frequency.ofHertz(hertz), new Slope(slope), SampleRate.DEFAULT);
  }

  private static double[][] noise() {
    Random random = new Random(20_261_131);
    double[][] channels = new double[2][FRAMES];
    for (double[] channel : channels) {
      for (int i = 0; i < FRAMES; i++) {
        channel[i] = random.nextGaussian();
      }
    }
    return channels;
  }
}
