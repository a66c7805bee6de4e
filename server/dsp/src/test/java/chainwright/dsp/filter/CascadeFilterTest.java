package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import chainwright.quantity.TimeSpan;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the running filter does, beside its design and beside an independent calculation. */
class CascadeFilterTest {

  private static final double SPECTRUM_OF_IMPULSE_RESPONSE = 1e-9;

  /**
   * Source: tables computed with numpy and scipy, see ORIGIN.md; each bound is the larger of 1e-12
   * and 20 times the case's {@code rounding_vs_longdouble} in the tables' index. The step of pt05
   * is allowed 2.74e-12 more, which is how far the table is from a calculation with 50 digits: its
   * own coefficients are rounded. With those coefficients the run meets the bound, see below.
   */
  @ParameterizedTest
  @CsvSource({
    "pt01_butter_hp4_80_48000, 1e-12, 1e-12, 2.9e-12",
    "pt02_butter_lp3_8000_44100, 1e-12, 1e-12, 1e-12",
    "pt03_lr_lp4_1000_48000, 1e-12, 1e-12, 1e-12",
    "pt04_rbj_bell_1000_48000, 1e-12, 1e-12, 1e-12",
    "pt05_rbj_lowshelf_120_48000, 1e-12, 4.47e-12, 1.53e-12",
    "pt06_rbj_notch_50_48000, 1e-12, 1.11e-11, 1.08e-11"
  })
  void process_ofReferenceCase_equalsTheTable(
      String file, double impulseBound, double stepBound, double noiseBound) {
    List<ReferenceTable.Row> table = ReferenceCases.table("time/" + file + ".csv");
    FilterCascade design = Curve.BILINEAR.design(timePrototype(file), ReferenceCases.rate(file));
    double[] impulse = new double[table.size()];
    impulse[0] = 1;
    double[] step = new double[table.size()];
    Arrays.fill(step, 1);
    check(design, impulse, ReferenceCases.column(table, "impulse"), impulseBound);
    check(design, step, ReferenceCases.column(table, "step"), stepBound);
    check(
        design,
        ReferenceCases.column(table, "lcg_in"),
        ReferenceCases.column(table, "lcg_out"),
        noiseBound);
  }

  /** Source: as above, with the coefficients of the table's index, and with its bound. */
  @Test
  void process_ofTheTablesOwnCoefficients_equalsTheTable() {
    BiquadCoefficients lowShelf =
        new BiquadCoefficients(
            1.001922297611396,
            -1.9795814896383812,
            0.9779494825409734,
            -1.9796238799225627,
            0.9798293898681877);
    double[] step = new double[1024];
    Arrays.fill(step, 1);
    check(
        FilterCascade.of(SampleRate.DEFAULT, List.of(lowShelf)),
        step,
        ReferenceCases.column(ReferenceCases.table("time/pt05_rbj_lowshelf_120_48000.csv"), "step"),
        1.73e-12);
  }

  /** Source: as above, a corrective chain of ten sections. */
  @Test
  void process_ofReferenceChain_equalsTheTable() {
    List<ReferenceTable.Row> table = ReferenceCases.table("time/pt_chain10.csv");
    FilterCascade chain =
        design(EqualiserPrototypes.highPass(hertz(40), new QualityFactor(Math.sqrt(0.5))))
            .then(design(shelf(true, 110, 2.5)))
            .then(design(bell(240, -3, 1.4)))
            .then(design(bell(700, -1.5, 2)))
            .then(design(bell(1800, 2, 0.9)))
            .then(design(bell(3500, 3, 1.1)))
            .then(design(EqualiserPrototypes.notch(hertz(50), new QualityFactor(20))))
            .then(design(bell(7200, -4, 3)))
            .then(design(shelf(false, 10_000, 2)))
            .then(
                design(
                    EqualiserPrototypes.lowPass(hertz(15_000), new QualityFactor(Math.sqrt(0.5)))));
    check(
        chain,
        ReferenceCases.column(table, "lcg_in"),
        ReferenceCases.column(table, "lcg_out"),
        2.33e-12);
  }

  /** The run is tied to the design: a wrong sign in the loop would pass tests of coefficients. */
  @ParameterizedTest
  @ValueSource(strings = {"ANALOGUE", "BILINEAR"})
  void process_ofAnImpulse_hasTheDesignsSpectrum(Curve curve) {
    FilterCascade design =
        curve
            .design(bell(3000, 6, 1), SampleRate.DEFAULT)
            .then(
                curve.design(
                    PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 5, hertz(12_000)),
                    SampleRate.DEFAULT))
            .then(curve.design(shelf(true, 900, -9), SampleRate.DEFAULT))
            .then(FilterCascade.ofGain(SampleRate.DEFAULT, new Decibels(-3)))
            .withInvertedPolarity();
    double[] impulse = new double[8192];
    impulse[0] = 1;
    run(design, impulse);
    double[] hertz = {0, 10, 440, 3000, 11_999, 20_000, 24_000};
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    design.evaluate(hertz, re, im);
    for (int k = 0; k < hertz.length; k++) {
      for (int n = 0; n < impulse.length; n++) {
        double angle = 2 * Math.PI * hertz[k] * n / SampleRate.DEFAULT.hertz();
        re[k] -= impulse[n] * Math.cos(angle);
        im[k] += impulse[n] * Math.sin(angle);
      }
      assertThat(Math.hypot(re[k], im[k]))
          .as("%s Hz", hertz[k])
          .isLessThan(SPECTRUM_OF_IMPULSE_RESPONSE);
    }
  }

  @Test
  void process_inBlocksOfAnySize_givesTheSameSamples() {
    FilterCascade design = design(bell(200, 9, 3)).then(design(shelf(false, 5000, -4)));
    double[] whole = noise(5000);
    double[] pieces = whole.clone();
    run(design, whole);
    CascadeFilter filter = new CascadeFilter(design, 1);
    Random random = new Random(20_261_127);
    for (int start = 0; start < pieces.length; ) {
      int end = Math.min(pieces.length, start + random.nextInt(700));
      filter.process(new double[][] {pieces}, start, end);
      start = end;
    }
    assertThat(pieces).isEqualTo(whole);
  }

  /** Odd and even numbers of sections and channels run in different ways. */
  @ParameterizedTest
  @CsvSource({"1, 2", "1, 3", "2, 2", "2, 5", "3, 2", "5, 3", "10, 4"})
  void process_ofManyChannels_givesEachWhatItGetsAlone(int sections, int channelCount) {
    FilterCascade design = design(bell(300, 3, 1));
    for (int s = 1; s < sections; s++) {
      design = design.then(design(bell(300 + 900 * s, 2 - s, 0.7 + s)));
    }
    double[][] together = new double[channelCount][];
    double[][] alone = new double[channelCount][];
    Random random = new Random(20_261_126);
    for (int c = 0; c < channelCount; c++) {
      together[c] = random.doubles(1000, -1, 1).toArray();
      alone[c] = together[c].clone();
      run(design, alone[c]);
    }
    new CascadeFilter(design, channelCount).process(together, 0, 1000);
    assertThat(together).isDeepEqualTo(alone);
  }

  @Test
  void process_ofNaNInOneChannel_leavesTheOthers() {
    FilterCascade design = design(bell(300, 3, 1)).then(design(bell(900, 3, 1)));
    double[][] channels = {noise(300), noise(300)};
    double[] clean = channels[1].clone();
    channels[0][100] = Double.NaN;
    run(design, clean);
    new CascadeFilter(design, 2).process(channels, 0, 300);
    assertThat(channels[0][100]).isNaN();
    assertThat(channels[1]).isEqualTo(clean);
  }

  @Test
  void process_afterReset_equalsANewFilter() {
    FilterCascade design = design(bell(200, 9, 3));
    CascadeFilter used = new CascadeFilter(design, 1);
    used.process(new double[][] {noise(777)}, 0, 777);
    used.reset();
    double[] again = noise(1000);
    double[] fresh = again.clone();
    used.process(new double[][] {again}, 0, again.length);
    run(design, fresh);
    assertThat(again).isEqualTo(fresh);
  }

  /** A filter that did not come to rest would go on in subnormal numbers, which are slow. */
  @Test
  void process_ofLongSilence_comesToRestExactly() {
    CascadeFilter filter = new CascadeFilter(design(bell(8000, 12, 1)), 1);
    filter.process(new double[][] {noise(100)}, 0, 100);
    double[] silence = new double[48_000];
    filter.process(new double[][] {silence}, 0, silence.length);
    assertThat(Arrays.copyOfRange(silence, 24_000, silence.length)).containsOnly(0);
  }

  @Test
  void newFilter_ofADesignWithDelay_throws() {
    FilterCascade design = FilterCascade.ofDelay(SampleRate.DEFAULT, new TimeSpan(0.001));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CascadeFilter(design, 1))
        .withMessage("a cascade of sections must have no delay, but had 48.0 samples");
  }

  private static void check(FilterCascade design, double[] input, double[] expected, double bound) {
    double[] output = input.clone();
    run(design, output);
    for (int n = 0; n < output.length; n++) {
      assertThat(output[n]).as("sample %s", n).isCloseTo(expected[n], within(bound));
    }
  }

  private static void run(FilterCascade design, double[] samples) {
    new CascadeFilter(design, 1).process(new double[][] {samples}, 0, samples.length);
  }

  private static AnaloguePrototype timePrototype(String file) {
    Frequency f = ReferenceCases.corner(file);
    return switch (file.substring(0, 4)) {
      case "pt01" -> PassPrototypes.highPass(PassFamily.BUTTERWORTH, 4, f);
      case "pt02" -> PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 3, f);
      case "pt03" -> PassPrototypes.lowPass(PassFamily.LINKWITZ_RILEY, 4, f);
      case "pt04" -> bell(f.hertz(), 6, 1);
      case "pt05" -> shelf(true, f.hertz(), 3);
      case "pt06" -> EqualiserPrototypes.notch(f, new QualityFactor(30));
      default -> throw new IllegalArgumentException("there is no reference case " + file);
    };
  }

  private static double[] noise(int length) {
    Random random = new Random(20_261_128);
    return random.doubles(length, -1, 1).toArray();
  }

  private static FilterCascade design(AnaloguePrototype prototype) {
    return Curve.BILINEAR.design(prototype, SampleRate.DEFAULT);
  }

  private static Frequency hertz(double hertz) {
    return Frequency.ofHertz(hertz);
  }

  private static AnaloguePrototype bell(double centreHz, double gainDb, double q) {
    return EqualiserPrototypes.bell(hertz(centreHz), new Decibels(gainDb), new QualityFactor(q));
  }

  private static AnaloguePrototype shelf(boolean low, double midpointHz, double gainDb) {
    Decibels gain = new Decibels(gainDb);
    QualityFactor q = EqualiserPrototypes.shelfQuality(1, gain);
    return low
        ? EqualiserPrototypes.lowShelf(hertz(midpointHz), gain, q)
        : EqualiserPrototypes.highShelf(hertz(midpointHz), gain, q);
  }
}
