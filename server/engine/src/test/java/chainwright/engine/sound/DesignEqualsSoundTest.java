package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.engine.WrittenChain;
import chainwright.engine.path.SignalPath;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is rendered has the response that is plotted, for everything that is linear. */
class DesignEqualsSoundTest {

  /** Of the largest magnitude; rounding of a response that decays over some 10⁵ samples. */
  private static final double BOUND = 1e-9;

  /** Below 1/5000 of the rate the poles lie so near 1 that their rounding alone is larger. */
  private static final double BOUND_OF_LOW_CUTOFFS = 1e-6;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "high-pass 66 Hz 18 dB/oct",
        "high-pass 30 Hz 6 dB/oct",
        "high-pass 80 Hz 48 dB/oct",
        "high-pass 80 Hz 24 dB/oct family linkwitz-riley",
        "high-pass 90 Hz 24 dB/oct family bessel",
        "high-pass 90 Hz 12 dB/oct Q 1.4",
        "low-pass 9 kHz 12 dB/oct",
        "low-pass 16 kHz 36 dB/oct curve bilinear",
        "bell 3.1 kHz -2.5 dB Q 2.2",
        "bell 16 kHz 6 dB Q 0.7",
        "bell 16 kHz 6 dB Q 0.7 curve bilinear",
        "low-shelf 120 Hz 3 dB",
        "high-shelf 12 kHz 2 dB",
        "tilt 2 dB 800 Hz",
        "notch 50 Hz Q 10",
        "all-pass 200 Hz Q 0.7",
        "band-pass 1 kHz Q 3",
        "gain -3 dB",
        "polarity inverted",
        "high-pass 66 Hz 18 dB/oct\nbell 300 Hz -2 dB Q 1.2\nhigh-shelf 12 kHz 2 dB\ngain 1 dB",
        "parallel {\npath \"dry\"\npath \"wet\" -10 dB {\nlow-pass 2 kHz 12 dB/oct\n}\n}",
        "multiband 24 dB/oct {\nband below 200 Hz {\ngain -1 dB\n}\n"
            + "band 200 Hz to 2 kHz {\nbell 800 Hz 3 dB Q 1\n}\nband above 2 kHz {\ngain 2 dB\n}\n}",
        "de-ess band 5 to 9 kHz threshold 0 dBFS",
        "de-ess broadband band 5 to 9 kHz threshold 0 dBFS",
        "dynamic-bell 3 kHz threshold 0 dBFS ratio 100:1 max-boost 4 dB",
        "dynamic-shelf high 8 kHz threshold 0 dBFS ratio 100:1 max-boost 3 dB",
        "dynamic-shelf low 200 Hz threshold 0 dBFS ratio 100:1 max-boost 3 dB",
        "delay 1 ms",
        "delay 1.2345 ms",
        "delay 0.01 ms",
        "align -2.01 ms",
        "align -2 ms",
        "parallel {\npath \"dry\"\npath \"late\" -3 dB {\ndelay 0.41 ms\n}\n}",
        "insert \"box\" send 4 dBu return 0 dBu {\nbell 100 Hz 2 dB Q 1\n}",
      })
  void chain_ofLinearStages_rendersItsPlot(String lines) {
    check(lines, BOUND);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"dc-offset-removal 3 Hz", "hum-removal 50 Hz", "high-pass 8 Hz 12 dB/oct"})
  void chain_ofVeryLowCutoffs_rendersItsPlot(String lines) {
    check(lines, BOUND_OF_LOW_CUTOFFS);
  }

  private static void check(String lines, double bound) {
    SignalPath path = WrittenChain.pathOf(lines);
    ProcessorDesign design = Rendered.design(path);
    double[] impulse = Rendered.impulseResponse(design);
    double rateHz = path.rate().hertz();
    double[] hertz = FrequencyGrid.logarithmic(10, 0.49 * rateHz, 60).toHertz();
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    Arrays.fill(re, 1);
    path.response().multiply(hertz, re, im);
    double largest = 0;
    double farthest = 0;
    for (int k = 0; k < hertz.length; k++) {
      double step = 2 * Math.PI * hertz[k] / rateHz;
      double sumRe = 0;
      double sumIm = 0;
      for (int n = 0; n < impulse.length; n++) {
        double angle = Math.IEEEremainder(step * (n - design.latencyFrames()), 2 * Math.PI);
        sumRe += impulse[n] * Math.cos(angle);
        sumIm -= impulse[n] * Math.sin(angle);
      }
      largest = Math.max(largest, Math.hypot(re[k], im[k]));
      farthest = Math.max(farthest, Math.hypot(sumRe - re[k], sumIm - im[k]));
    }
    assertThat(farthest / largest).as(lines).isLessThan(bound);
  }
}
