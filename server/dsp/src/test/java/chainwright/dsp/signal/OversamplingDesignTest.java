package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Filters of a multiple of the rate; frequencies are shares of the rate. */
class OversamplingDesignTest {

  private static final ProcessorDesign WIRE = new FactorDesign(1);

  /** The end of the band, as a share of the rate. */
  private static final double BAND = 5 / 11.0;

  /** Keeps the last frames of the multiple. */
  private static final class Spy implements ProcessorDesign, Processor {
    private final double[] heard = new double[4096];

    @Override
    public Processor newProcessor(Wiring wiring) {
      return this;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      int count = Math.min(heard.length, to - from);
      System.arraycopy(heard, count, heard, 0, heard.length - count);
      System.arraycopy(channels[0], to - count, heard, heard.length - count, count);
    }

    @Override
    public void reset() {}
  }

  /** Replaces what comes in by a tone, so that what is left of it can be heard. */
  private static final class Tone implements ProcessorDesign, Processor {
    private final double share;
    private long frame;

    Tone(double share) {
      this.share = share;
    }

    @Override
    public Processor newProcessor(Wiring wiring) {
      return this;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int i = from; i < to; i++) {
        channels[0][i] = Math.cos(2 * Math.PI * share * frame++);
      }
    }

    @Override
    public void reset() {}
  }

  private static double[] run(ProcessorDesign design, double[] signal) {
    double[] out = signal.clone();
    design.newProcessor(Wiring.ofChannels(1)).process(new double[][] {out}, 0, out.length);
    return out;
  }

  private static double[] impulse(int frames) {
    double[] signal = new double[frames];
    signal[0] = 1;
    return signal;
  }

  /** The response at a frequency, by the Fourier sum, with the latency taken away. */
  private static double[] response(double[] impulseResponse, double share, int late) {
    double re = 0;
    double im = 0;
    for (int n = 0; n < impulseResponse.length; n++) {
      re += impulseResponse[n] * Math.cos(2 * Math.PI * share * (n - late));
      im -= impulseResponse[n] * Math.sin(2 * Math.PI * share * (n - late));
    }
    return new double[] {re, im};
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4, 8, 16, 32})
  void wire_oversampled_isFlatAndExactlyAsLateAsItSays(int factor) {
    OversamplingDesign design = new OversamplingDesign(WIRE, factor);
    double[] response = run(design, impulse(1024));
    for (double share = 0; share <= BAND; share += BAND / 40) {
      double[] at = response(response, share, design.latencyFrames());
      assertThat(20 * Math.log10(Math.hypot(at[0], at[1])))
          .as("gain at %s of the rate", share)
          .isCloseTo(0, within(0.01));
      assertThat(at[1]).as("phase at %s of the rate", share).isCloseTo(0, within(1e-12));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 4, 8, 16, 32})
  void raising_toneOfTheBand_hasNoImageAbove100Decibels(int factor) {
    for (double share : new double[] {0, 0.01, 0.2, 0.37, BAND}) {
      Spy spy = new Spy();
      double[] signal = new double[4096];
      for (int i = 0; i < signal.length; i++) {
        signal[i] = Math.cos(2 * Math.PI * share * i);
      }
      run(new OversamplingDesign(spy, factor), signal);
      for (int n = 1; n < factor; n++) {
        assertThat(amplitude(spy.heard, (n + share) / factor)).isLessThan(1e-5);
        assertThat(amplitude(spy.heard, (n - share) / factor)).isLessThan(1e-5);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 4, 8, 16, 32})
  void lowering_toneThatWouldFoldIntoTheBand_isTakenAwayBy100Decibels(int factor) {
    double step = factor > 4 ? 0.237 : 0.023;
    for (double share = 1 - BAND; share <= factor / 2.0; share += step) {
      if (Math.abs(share - Math.rint(share)) > BAND) {
        continue;
      }
      Tone tone = new Tone(share / factor);
      double[] out = run(new OversamplingDesign(tone, factor), new double[1024]);
      for (int i = 512; i < out.length; i++) {
        assertThat(Math.abs(out[i])).as("tone at %s of the rate", share).isLessThan(1e-5);
      }
    }
  }

  /** By a Blackman-Harris window, whose side lobes lie at −92 dB: twice, so that they vanish. */
  private static double amplitude(double[] x, double share) {
    double re = 0;
    double im = 0;
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      double a = 2 * Math.PI * (i + 0.5) / x.length;
      double w =
          0.35875 - 0.48829 * Math.cos(a) + 0.14128 * Math.cos(2 * a) - 0.01168 * Math.cos(3 * a);
      w *= w;
      re += w * x[i] * Math.cos(2 * Math.PI * share * i);
      im -= w * x[i] * Math.sin(2 * Math.PI * share * i);
      sum += w;
    }
    return 2 * Math.hypot(re, im) / sum;
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 8, 32})
  void steadySignal_afterItsStart_passesExactly(int factor) {
    double[] signal = new double[2000];
    Arrays.fill(signal, 0.25);
    double[] out = run(new OversamplingDesign(WIRE, factor), signal);
    assertThat(out[1999]).isCloseTo(0.25, within(1e-14));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 8, 32})
  void wrongSamples_inASignal_leaveNothingBehind(int factor) {
    OversamplingDesign design = new OversamplingDesign(WIRE, factor);
    double[] signal = new double[1500];
    signal[100] = Double.NaN;
    signal[200] = Double.POSITIVE_INFINITY;
    signal[250] = Double.MIN_VALUE;
    double[] out = run(design, signal);
    for (int i = 0; i < out.length; i++) {
      if (i == 100 + design.latencyFrames()) {
        assertThat(out[i]).isNaN();
      } else {
        assertThat(out[i]).isFinite();
      }
    }
    assertThat(out[1499]).isZero();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 3, 64, -2})
  void factor_notAPowerOfTwoTo32_throws(int factor) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new OversamplingDesign(WIRE, factor))
        .withMessageContaining("was " + factor);
  }
}
