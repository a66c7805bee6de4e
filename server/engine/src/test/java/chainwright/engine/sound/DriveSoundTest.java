package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.nonlinear.Harmonics;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is rendered of saturations and clippers: their distortion, and what folds back. */
class DriveSoundTest {

  private static final int RATE_HZ = 48_000;

  /** A whole number of periods of every multiple of 10 Hz. */
  private static final int WINDOW = 4_800;

  private static double[] sine(String line, double hertz, double levelDbfs) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(line));
    double amplitude = Math.pow(10, levelDbfs / 20);
    double[] channel = new double[2 * RATE_HZ];
    for (int i = 0; i < channel.length; i++) {
      channel[i] = amplitude * Math.sin(2 * Math.PI * (i * hertz % RATE_HZ) / RATE_HZ);
    }
    design.newProcessor(Wiring.ofChannels(1)).process(new double[][] {channel}, 0, channel.length);
    return channel;
  }

  /** The amplitude of a line at the end of a signal, by the Fourier sum over whole periods. */
  private static double line(double[] channel, double hertz) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < WINDOW; i++) {
      double angle = 2 * Math.PI * (i * hertz % RATE_HZ) / RATE_HZ;
      re += channel[channel.length - WINDOW + i] * Math.cos(angle);
      im += channel[channel.length - WINDOW + i] * Math.sin(angle);
    }
    return 2 * Math.hypot(re, im) / WINDOW;
  }

  private static double thdShare(double[] channel) {
    double squares = 0;
    for (int n = 2; n <= Harmonics.THD_COUNT; n++) {
      squares += Math.pow(line(channel, n * 1000), 2);
    }
    return Math.sqrt(squares) / line(channel, 1000);
  }

  /** The setting says it: the distortion of 1 kHz at −18 dBFS (EBU R 68) without drive. */
  @ParameterizedTest
  @CsvSource({
    "symmetric, 0.3", "asymmetric, 0.3", "tape, 0.3", "transformer, 0.3", "valve, 0.3",
    "symmetric, 3", "asymmetric, 3", "tape, 3", "transformer, 3", "valve, 3",
    "tape, 0.05", "valve, 0.05",
  })
  void saturation_renderedAtAlignment_distortsAsWritten(String character, double percent) {
    String line = "saturation " + character + " drive 0 dB thd-at-alignment " + percent + " %";
    double[] channel = sine(line, 1000, -18);
    assertThat(100 * thdShare(channel)).isCloseTo(percent, within(0.002 * percent));
  }

  /** Half of the sound saturated: half of the harmonics, and a fundamental that nothing cancels. */
  @ParameterizedTest
  @ValueSource(strings = {"symmetric", "asymmetric", "tape head-bump 0 dB", "transformer", "valve"})
  void saturation_halfBlended_hasHalfTheHarmonicsAndCombsNothing(String character) {
    String all = "saturation " + character + " drive 6 dB";
    double[] wet = sine(all, 1000, -18);
    double[] half = sine(all + " blend 50 %", 1000, -18);
    assertThat(line(half, 2000)).isCloseTo(line(wet, 2000) / 2, within(1e-9));
    assertThat(line(half, 3000)).isCloseTo(line(wet, 3000) / 2, within(1e-9));
    for (double hertz : new double[] {500, 3000, 9000, 15_000, 21_000}) {
      double levelDb = 20 * Math.log10(line(sine(all + " blend 50 %", hertz, -60), hertz));
      assertThat(levelDb).as("%s Hz", hertz).isCloseTo(-60, within(0.01));
    }
  }

  /** Whatever the curve adds to one side, a coupling takes: the mean over whole periods. */
  @ParameterizedTest
  @ValueSource(strings = {"asymmetric asymmetry 100 %", "valve asymmetry 100 % drive 18 dB"})
  void asymmetricSaturation_loudSine_leavesNoOffset(String character) {
    double[] channel = sine("saturation " + character, 1000, 0);
    double sum = 0;
    for (int i = channel.length - WINDOW; i < channel.length; i++) {
      sum += channel[i] / WINDOW;
    }
    assertThat(Math.abs(sum)).isLessThan(1e-6);
  }

  @Test
  void valve_differsFromAnAsymmetricByItsBiasAlone() {
    double[] asymmetric = sine("saturation asymmetric", 1000, 0);
    assertThat(sine("saturation valve bias-shift 0 ms", 1000, 0)).isEqualTo(asymmetric);
    double[] valve = sine("saturation valve", 1000, 0);
    assertThat(line(valve, 2000) / line(asymmetric, 2000)).isNotCloseTo(1, within(0.2));
    // What is driven 12 dB above alignment is not over it: −18 + 12 − 3 dBFS.
    assertThat(sine("saturation valve", 1000, -9.5))
        .isEqualTo(sine("saturation asymmetric", 1000, -9.5));
  }

  private static double worstAliasDb(double[] channel) {
    double worst = 0;
    for (int k = 1; k <= 20; k++) {
      worst = k % 5 == 0 ? worst : Math.max(worst, line(channel, 1000 * k));
    }
    return 20 * Math.log10(worst);
  }

  /**
   * A 5 kHz sine at 0 dBFS; what folds back lies on the other multiples of 1 kHz, all of which
   * count up to 20 kHz. Measured here; no source.
   */
  @ParameterizedTest
  @CsvSource({
    "clipper ceiling -3 dBFS knee 0 dB oversampling 1, -33",
    "clipper ceiling -3 dBFS knee 0 dB oversampling 2, -49",
    "clipper ceiling -3 dBFS knee 0 dB oversampling 4, -64",
    "clipper ceiling -3 dBFS knee 0 dB oversampling 8, -76",
    "clipper ceiling -3 dBFS knee 0 dB oversampling 16, -88",
    "clipper ceiling -3 dBFS knee 0 dB oversampling 32, -100",
    "clipper ceiling -3 dBFS, -100",
    "saturation symmetric, -150",
    "saturation asymmetric, -150",
    "saturation tape, -150",
    "saturation transformer, -150",
    "saturation valve, -125",
    "saturation valve bias-shift 0 ms, -150",
    "saturation tape drive 18 dB, -53",
    "saturation tape drive 18 dB oversampling 16, -100",
  })
  void fullScaleSine_of5Kilohertz_foldsBackNoLouder(String line, double aliasDbfs) {
    assertThat(worstAliasDb(sine(line, 5000, 0))).isLessThan(aliasDbfs);
  }

  /**
   * The tips are cut at the multiple of the rate; without what lies above the band they swing over.
   * Measured here: at most 1.4 dB on a clipped sine, nothing without oversampling.
   */
  @ParameterizedTest
  @CsvSource({
    "clipper ceiling -6 dBFS knee 0 dB oversampling 1, 1e-12",
    "clipper ceiling -6 dBFS knee 0 dB, 1.4",
    "clipper ceiling -6 dBFS, 1.4",
  })
  void clipper_fullScaleSines_staySoNearTheCeiling(String line, double overDb) {
    double worst = 0;
    for (double hertz = 1000; hertz < 8000; hertz += 940) {
      for (double sample : sine(line, hertz, 0)) {
        worst = Math.max(worst, Math.abs(sample));
      }
    }
    assertThat(20 * Math.log10(worst)).isLessThan(-6 + overDb);
  }
}
