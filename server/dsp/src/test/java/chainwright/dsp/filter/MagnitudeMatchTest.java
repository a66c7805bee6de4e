package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How near the analogue curve comes to its prototypes, which are written out in s and exact. */
class MagnitudeMatchTest {

  private static final double PROMISED_SHARE = 0.45;
  private static final double[] CENTRE_SHARES = {
    1e-4, 1e-3, 0.005, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4
  };
  private static final double[] GAINS_DB = {-18, -12, -6, -1, 1, 6, 12, 18};
  private static final double[] ONE_GAIN = {0};
  private static final double[] RATES = {8000, 16_000, 44_100, 48_000, 96_000, 192_000, 384_000};

  /** The design meets its held gain to rounding; low corners at high rates round coarsest. */
  private static final double HELD_GAIN_DB = 1e-7;

  /** How near to the null of a notch nothing is compared, as detuning {@code Q (f/fc - fc/f)}. */
  private static final double NULL_DETUNING = 0.1;

  @ParameterizedTest
  @CsvSource({
    "p17_rbj_bell_1000_48000, 0.01",
    "p18_rbj_bell_250_44100, 0.01",
    "p19_rbj_bell_3000_48000, 0.05",
    "p20_rbj_bell_12000_48000, 0.1",
    "p21_rbj_bell_60_192000, 0.01",
    "p22_rbj_lowshelf_120_48000, 0.01",
    "p23_rbj_lowshelf_200_44100, 0.01",
    "p24_rbj_highshelf_8000_48000, 0.01",
    "p25_rbj_highshelf_10000_96000, 0.02"
  })
  void analogueCurve_ofReferenceCase_followsTheTable(String file, double toleranceDb) {
    List<ReferenceTable.Row> table = ReferenceCases.table("responses/" + file + ".csv");
    AnaloguePrototype prototype = ReferenceCases.prototype(file);
    SampleRate rate = ReferenceCases.rate(file);
    double[] hertz = ReferenceCases.column(table, "f_hz");
    // The table's prototype of this case has a width in octaves, its filter one bent by the rate.
    double[] analogue =
        file.startsWith("p19")
            ? prototype.toDecibels(hertz)
            : ReferenceCases.column(table, "ana_mag_db");
    double[] actual = Curve.ANALOGUE.design(prototype, rate).toDecibels(hertz);
    for (int i = 0; i < hertz.length; i++) {
      if (hertz[i] <= PROMISED_SHARE * rate.hertz()) {
        assertThat(actual[i]).as("%s Hz", hertz[i]).isCloseTo(analogue[i], within(toleranceDb));
      }
    }
  }

  /**
   * Source of the figures to beat: cramping.csv, the deviation of the methods of Vicanek 2016 and
   * Orfanidis 1997.
   */
  @Test
  void analogueCurve_besidePublishedMethods_deviatesLess() {
    for (ReferenceTable.Row row : ReferenceCases.table("responses/cramping.csv")) {
      SampleRate rate = SampleRate.ofHertz(row.number("fs"));
      AnaloguePrototype bell =
          Shape.BELL.prototype(row.number("f0_hz"), row.number("gain_db"), row.number("Q"));
      double highest = Math.min(20_000, 0.49 * rate.hertz());
      double[] hertz = FrequencyGrid.logarithmic(20, highest, 2000).toHertz();
      double bilinear = deviation(Curve.BILINEAR, bell, rate, hertz);
      assertThat(bilinear).isCloseTo(row.number("rbj_maxdev_db"), within(1e-4));
      assertThat(deviation(Curve.ANALOGUE, bell, rate, hertz))
          .as("bell at %s Hz", row.text("f0_hz"))
          .isLessThan(row.number("vicanek2016_maxdev_db"))
          .isLessThan(row.number("orfanidis1997_maxdev_db"));
    }
  }

  @Test
  void bell_onTheGrid_staysWithinItsBound() {
    check(0.30, new double[] {0.3, 0.5, 0.7071, 1, 1.4, 2, 3, 5, 10}, GAINS_DB, Shape.BELL);
  }

  @Test
  void shelf_onTheGrid_staysWithinItsBound() {
    check(0.34, new double[] {0.3, 0.5, 0.7071, 1, 1.4, 2}, GAINS_DB, Shape.LOW_SHELF);
    check(0.34, new double[] {0.3, 0.5, 0.7071, 1, 1.4, 2}, GAINS_DB, Shape.HIGH_SHELF);
  }

  @Test
  void tilt_onTheGrid_staysWithinItsBound() {
    check(0.39, new double[] {1}, GAINS_DB, Shape.TILT);
  }

  @Test
  void lowPass_onTheGrid_staysWithinItsBound() {
    check(0.25, new double[] {0.3, 0.5, 0.7071, 1, 2, 5, 10}, ONE_GAIN, Shape.LOW_PASS);
  }

  @Test
  void highPass_onTheGrid_staysWithinItsBound() {
    check(1.13, new double[] {0.3, 0.5, 0.7071, 1, 2, 5}, ONE_GAIN, Shape.HIGH_PASS);
    check(1.65, new double[] {10}, ONE_GAIN, Shape.HIGH_PASS);
  }

  @Test
  void bandPass_onTheGrid_staysWithinItsBound() {
    check(0.54, new double[] {0.3, 0.5, 0.7071, 1, 2, 5, 10}, ONE_GAIN, Shape.BAND_PASS);
  }

  @Test
  void notch_onTheGrid_staysWithinItsBoundBesideTheNull() {
    check(0.15, new double[] {5, 10, 30, 100}, ONE_GAIN, Shape.NOTCH);
  }

  @Test
  void dip_onTheGrid_staysWithinItsBound() {
    check(0.41, new double[] {1, 2, 5, 30}, new double[] {-40, -20, -6}, Shape.DIP);
  }

  @ParameterizedTest
  @CsvSource({
    "BUTTERWORTH, 1, 0.35",
    "BUTTERWORTH, 2, 0.21",
    "BUTTERWORTH, 4, 0.42",
    "BUTTERWORTH, 8, 0.84",
    "BESSEL_MAGNITUDE, 2, 0.21",
    "BESSEL_MAGNITUDE, 4, 0.42",
    "BESSEL_MAGNITUDE, 8, 0.84",
    "BESSEL_PHASE, 3, 0.41",
    "BESSEL_PHASE, 6, 0.63",
    "BESSEL_PHASE, 8, 0.84"
  })
  void passFilter_onTheGrid_staysWithinItsBound(PassFamily family, int order, double boundDb) {
    for (double share : CENTRE_SHARES) {
      Frequency cutoff = Frequency.ofHertz(share * SampleRate.DEFAULT.hertz());
      for (AnaloguePrototype prototype :
          List.of(
              PassPrototypes.lowPass(family, order, cutoff),
              PassPrototypes.highPass(family, order, cutoff))) {
        assertThat(
                deviation(
                    Curve.ANALOGUE, prototype, SampleRate.DEFAULT, promisedBand(cutoff.hertz())))
            .as("cutoff %s", cutoff)
            .isLessThan(boundDb);
      }
    }
  }

  @Test
  void butterworth_atItsCutoff_keepsTheCornerExactly() {
    for (double share : CENTRE_SHARES) {
      Frequency cutoff = Frequency.ofHertz(share * SampleRate.DEFAULT.hertz());
      for (int order = 1; order <= PassPrototypes.HIGHEST_ORDER; order++) {
        AnaloguePrototype prototype = PassPrototypes.lowPass(PassFamily.BUTTERWORTH, order, cutoff);
        assertThat(Curve.ANALOGUE.design(prototype, SampleRate.DEFAULT).decibelsAt(cutoff.hertz()))
            .isCloseTo(ResponseSearch.HALF_POWER_DB, within(HELD_GAIN_DB));
      }
    }
  }

  /** A cut undoes the boost, phase included; where numbers round coarsest is at 30 Hz. */
  @ParameterizedTest
  @ValueSource(strings = {"BELL", "LOW_SHELF", "HIGH_SHELF", "TILT"})
  void cut_afterTheSameBoost_leavesTheSignal(Shape shape) {
    Random random = new Random(20_261_125);
    for (int i = 0; i < 500; i++) {
      double centreHz = 30 * Math.pow(0.45 * 48_000 / 30, random.nextDouble());
      double q = 0.3 * Math.pow(30, random.nextDouble());
      double gainDb = 24 * random.nextDouble();
      for (Curve curve : Curve.values()) {
        Response both =
            curve
                .design(shape.prototype(centreHz, gainDb, q), SampleRate.DEFAULT)
                .then(curve.design(shape.prototype(centreHz, -gainDb, q), SampleRate.DEFAULT));
        double[] hertz = promisedBand(centreHz);
        double[] re = new double[hertz.length];
        double[] im = new double[hertz.length];
        both.evaluate(hertz, re, im);
        for (int k = 0; k < hertz.length; k++) {
          assertThat(Math.hypot(re[k] - 1, im[k]))
              .as("%s %s Hz %s dB Q %s at %s Hz", shape, centreHz, gainDb, q, hertz[k])
              .isLessThan(1e-8);
        }
      }
    }
  }

  /** Between the points of the grid, where a pole near half the rate once rose 90 dB over it. */
  @Test
  void bellOrShelf_drawnAtRandom_nowhereRisesOverItsPrototype() {
    Random random = new Random(20_261_127);
    for (int i = 0; i < 20_000; i++) {
      AnaloguePrototype prototype = drawn(random, 0.25, 0.4);
      AnalogueSection section = prototype.sections().get(0);
      FilterCascade design = Curve.ANALOGUE.design(prototype, SampleRate.DEFAULT);
      double[] promised = promisedBand(section.corner().hertz());
      assertThat(deviation(Curve.ANALOGUE, prototype, SampleRate.DEFAULT, promised))
          .as("%s", prototype)
          .isLessThan(0.6);
      assertThat(design.boundDecibels())
          .as("%s", prototype)
          .isLessThan(MatchPromise.highestDecibels(section) + MatchPromise.DEVIATION_DB);
    }
  }

  @Test
  void estimate_ofWhatIsNotDesigned_containsWhatIsDesigned() {
    Random random = new Random(20_261_128);
    int promised = 0;
    for (int i = 0; i < 20_000; i++) {
      AnaloguePrototype prototype = drawn(random, 0.0001, 0.4);
      Response later = Curve.ANALOGUE.designLater(prototype, SampleRate.DEFAULT);
      double hertz = 48_000 * 0.49 * random.nextDouble();
      double[] two = {hertz, 48_000 * 0.49 * random.nextDouble()};
      Estimate mean = later.estimateMean(two);
      promised += mean.errorDb() > 0 ? 1 : 0;
      checkEstimate(later, prototype, hertz);
      assertThat((later.decibelsAt(two[0]) + later.decibelsAt(two[1])) / 2)
          .as("%s at %s and %s Hz", prototype, two[0], two[1])
          .isBetween(mean.leastDb() - 1e-9, mean.mostDb() + 1e-9);
    }
    assertThat(promised).isGreaterThan(10_000);
  }

  @Test
  void highPassThatIsNotDesigned_drawnAtRandom_isEstimatedWithinItsError() {
    Random random = new Random(20_261_129);
    int promised = 0;
    for (int i = 0; i < 20_000; i++) {
      Frequency cutoff = Frequency.ofHertz(48_000 * 1e-4 * Math.pow(4000, random.nextDouble()));
      boolean isOdd = random.nextBoolean();
      PassFamily family =
          isOdd
              ? PassFamily.BUTTERWORTH
              : List.copyOf(EnumSet.allOf(PassFamily.class)).get(random.nextInt(4));
      int order = 2 * (1 + random.nextInt(4)) - (isOdd ? 1 : 0);
      AnaloguePrototype prototype =
          random.nextBoolean()
              ? PassPrototypes.highPass(family, order, cutoff)
              : Shape.HIGH_PASS.prototype(
                  cutoff.hertz(), 0, 0.3 * Math.pow(20, random.nextDouble()));
      Response later = Curve.ANALOGUE.designLater(prototype, SampleRate.DEFAULT);
      double hertz = 24_000 * Math.pow(1e-4, random.nextDouble());
      promised += later.estimateAt(hertz).errorDb() > 0 ? 1 : 0;
      checkEstimate(later, prototype, hertz);
    }
    assertThat(promised).isGreaterThan(10_000);
  }

  /** Asks before the filter is designed and compares with what it is then. */
  private static void checkEstimate(Response later, AnaloguePrototype prototype, double hertz) {
    Estimate estimate = later.estimateAt(hertz);
    double boundDb = later.boundDecibels();
    assertThat(later.decibelsAt(hertz))
        .as("%s at %s Hz", prototype, hertz)
        .isBetween(estimate.leastDb() - 1e-9, estimate.mostDb() + 1e-9)
        .isLessThanOrEqualTo(boundDb + 1e-9);
  }

  private static AnaloguePrototype drawn(Random random, double leastShare, double mostShare) {
    Shape shape = List.of(Shape.BELL, Shape.LOW_SHELF, Shape.HIGH_SHELF).get(random.nextInt(3));
    double share = leastShare * Math.pow(mostShare / leastShare, random.nextDouble());
    double q = 0.3 * Math.pow((shape == Shape.BELL ? 10 : 2) / 0.3, random.nextDouble());
    return shape.prototype(48_000 * share, 36 * random.nextDouble() - 18, q);
  }

  @Test
  void everyCurve_atAnyRate_isStableAndInvertible() {
    Random random = new Random(20_261_126);
    for (int i = 0; i < 20_000; i++) {
      SampleRate rate = SampleRate.ofHertz(RATES[random.nextInt(RATES.length)]);
      double centreHz = 10 * Math.pow(0.495 * rate.hertz() / 10, random.nextDouble());
      double q = 0.05 * Math.pow(2000, random.nextDouble());
      double gainDb = 80 * random.nextDouble() - 40;
      Shape shape = Shape.values()[random.nextInt(Shape.values().length)];
      for (Curve curve : Curve.values()) {
        FilterCascade design = curve.design(shape.prototype(centreHz, gainDb, q), rate);
        assertThat(design.isStable() && (!shape.invertible || isMinimumPhase(design)))
            .as("%s %s %s Hz %s dB Q %s rate %s", curve, shape, centreHz, gainDb, q, rate)
            .isTrue();
      }
    }
  }

  private static boolean isMinimumPhase(FilterCascade design) {
    return design.sections().stream().allMatch(BiquadCoefficients::isMinimumPhase);
  }

  /** The one caller: every centre, quality and gain of the grid, at 48 kHz. */
  private static void check(double boundDb, double[] qualities, double[] gainsDb, Shape shape) {
    for (double share : CENTRE_SHARES) {
      for (double q : qualities) {
        for (double gainDb : gainsDb) {
          double centreHz = share * SampleRate.DEFAULT.hertz();
          AnaloguePrototype prototype = shape.prototype(centreHz, gainDb, q);
          double[] hertz = promisedBand(centreHz);
          if (shape == Shape.NOTCH) {
            hertz = withoutNull(hertz, centreHz, q);
          } else {
            FilterCascade design = Curve.ANALOGUE.design(prototype, SampleRate.DEFAULT);
            assertThat(design.decibelsAt(centreHz))
                .as("%s %s Hz %s dB Q %s at its centre", shape, centreHz, gainDb, q)
                .isCloseTo(prototype.decibelsAt(centreHz), within(HELD_GAIN_DB));
          }
          assertThat(deviation(Curve.ANALOGUE, prototype, SampleRate.DEFAULT, hertz))
              .as("%s %s Hz %s dB Q %s", shape, centreHz, gainDb, q)
              .isLessThan(boundDb);
        }
      }
    }
  }

  private static double[] promisedBand(double centreHz) {
    double highest = PROMISED_SHARE * SampleRate.DEFAULT.hertz();
    double[] evenly = new double[100];
    for (int i = 0; i < evenly.length; i++) {
      evenly[i] = highest * (i + 1) / evenly.length;
    }
    return FrequencyGrid.logarithmic(Math.min(10, centreHz / 10), highest, 300)
        .with(evenly)
        .with(centreHz)
        .toHertz();
  }

  private static double[] withoutNull(double[] hertz, double centreHz, double q) {
    return Arrays.stream(hertz)
        .filter(f -> Math.abs(f / centreHz - centreHz / f) * q >= NULL_DETUNING)
        .toArray();
  }

  private static double deviation(
      Curve curve, AnaloguePrototype prototype, SampleRate rate, double[] hertz) {
    double[] actual = curve.design(prototype, rate).toDecibels(hertz);
    double[] wanted = prototype.toDecibels(hertz);
    double worst = 0;
    for (int i = 0; i < hertz.length; i++) {
      worst = Math.max(worst, Math.abs(actual[i] - wanted[i]));
    }
    return worst;
  }

  enum Shape {
    BELL(true),
    LOW_SHELF(true),
    HIGH_SHELF(true),
    TILT(true),
    LOW_PASS(false),
    HIGH_PASS(false),
    BAND_PASS(false),
    NOTCH(false),
    DIP(true);

    private final boolean invertible;

    Shape(boolean invertible) {
      this.invertible = invertible;
    }

    AnaloguePrototype prototype(double centreHz, double gainDb, double q) {
      Frequency f = Frequency.ofHertz(centreHz);
      QualityFactor quality = new QualityFactor(q);
      Decibels gain = new Decibels(gainDb);
      return switch (this) {
        case BELL -> EqualiserPrototypes.bell(f, gain, quality);
        case LOW_SHELF -> EqualiserPrototypes.lowShelf(f, gain, quality);
        case HIGH_SHELF -> EqualiserPrototypes.highShelf(f, gain, quality);
        case TILT -> EqualiserPrototypes.tilt(f, gain);
        case LOW_PASS -> EqualiserPrototypes.lowPass(f, quality);
        case HIGH_PASS -> EqualiserPrototypes.highPass(f, quality);
        case BAND_PASS -> EqualiserPrototypes.bandPass(f, quality);
        case NOTCH -> EqualiserPrototypes.notch(f, quality);
        case DIP -> EqualiserPrototypes.dip(f, quality, new Decibels(-Math.abs(gainDb)));
      };
    }
  }
}
