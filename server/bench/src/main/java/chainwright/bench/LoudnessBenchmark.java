package chainwright.bench;

import chainwright.dsp.loudness.ChannelPosition;
import chainwright.dsp.loudness.LevelMeter;
import chainwright.dsp.loudness.LoudnessMeter;
import chainwright.dsp.loudness.SignalMeter;
import chainwright.dsp.loudness.TruePeakMeter;
import chainwright.quantity.SampleRate;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What each meter takes for a second of steady noise, stereo at 48 kHz. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class LoudnessBenchmark {

  private static final SampleRate RATE = SampleRate.ofHertz(48_000);

  private final double[][] second = new double[2][48_000];
  private final LoudnessMeter loudness = new LoudnessMeter(RATE, ChannelPosition.usual(2));
  private final TruePeakMeter annex2 = TruePeakMeter.ofAnnex2(2);
  private final TruePeakMeter bothPeaks = TruePeakMeter.ofBoth(2);
  private final SignalMeter all =
      new SignalMeter(RATE, ChannelPosition.usual(2), LevelMeter.FLOATING_POINT_FULL_SCALE);

  /** Made by the benchmark's runner. */
  public LoudnessBenchmark() {}

  /** Makes the noise. */
  @Setup
  public void fill() {
    Random random = new Random(1);
    for (double[] channel : second) {
      for (int n = 0; n < channel.length; n++) {
        channel[n] = random.nextDouble() - 0.5;
      }
    }
  }

  /**
   * Measures loudness.
   *
   * @return the momentary loudness, so that nothing is left out
   */
  @Benchmark
  public double loudness() {
    loudness.process(second, 0, second[0].length);
    return loudness.momentaryLufs();
  }

  /** Measures true peak by the standard. */
  @Benchmark
  public void annex2() {
    annex2.process(second, 0, second[0].length);
  }

  /** Measures true peak by the standard and finer. */
  @Benchmark
  public void bothPeaks() {
    bothPeaks.process(second, 0, second[0].length);
  }

  /** Measures everything. */
  @Benchmark
  public void all() {
    all.process(second, 0, second[0].length);
  }
}
