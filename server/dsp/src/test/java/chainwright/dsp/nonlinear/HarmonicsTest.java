package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.dsp.reference.ReferenceTable.Row;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class HarmonicsTest {

  /** Full scale 1.0; the reference is written with 15 digits and was checked to 1.8e-9. */
  private static final double TOLERANCE = 1e-8;

  private static final int REFERENCE_COUNT = 15;

  private static Shaper shaper(String name) {
    return switch (name) {
      case "tanh" -> new TanhShaper();
      case "cubic" -> new CubicShaper();
      case "hardclip" -> new HardClipShaper(0);
      case "atan" -> new ArctangentShaper();
      default -> throw new IllegalArgumentException(name);
    };
  }

  private static Harmonics harmonics(Row row) {
    return shaper(row.text("shaper")).harmonicsOfSine(row.number("drive"), REFERENCE_COUNT);
  }

  @Test
  void harmonics_referenceTable_agree() {
    for (Row row : ReferenceTable.read(HarmonicsTest.class, "harmonics.csv")) {
      int n = (int) row.number("n");
      Harmonics harmonics = harmonics(row);
      assertThat(harmonics.sineAmplitude(n))
          .as("%s", row)
          .isCloseTo(row.number("amp"), within(TOLERANCE));
      assertThat(harmonics.amplitude(n)).isCloseTo(Math.abs(row.number("amp")), within(TOLERANCE));
      assertThat(harmonics.cosineAmplitude(n)).isZero();
    }
  }

  @Test
  void thd_referenceTable_agrees() {
    for (Row row : ReferenceTable.read(HarmonicsTest.class, "thd.csv")) {
      Harmonics harmonics = harmonics(row);
      assertThat(harmonics.thdShare())
          .as("%s", row)
          .isCloseTo(row.number("thd_f_percent") / 100, within(TOLERANCE));
      assertThat(harmonics.thdOfTotalShare())
          .as("%s", row)
          .isCloseTo(row.number("thd_r_percent") / 100, within(TOLERANCE));
    }
  }

  @Test
  void quadratic_referenceTable_agrees() {
    for (Row row : ReferenceTable.read(HarmonicsTest.class, "quadratic.csv")) {
      Harmonics harmonics =
          new QuadraticShaper(row.number("k")).harmonicsOfSine(row.number("drive"), 4);
      assertThat(harmonics.dcOffset()).isCloseTo(row.number("dc"), within(TOLERANCE));
      assertThat(harmonics.amplitude(1)).isCloseTo(row.number("h1"), within(TOLERANCE));
      assertThat(harmonics.amplitude(2)).isCloseTo(row.number("h2"), within(TOLERANCE));
      assertThat(harmonics.amplitude(3)).isZero();
      assertThat(harmonics.thdShare())
          .isCloseTo(row.number("thd_f_percent") / 100, within(TOLERANCE));
    }
  }

  static Stream<Arguments> shapersAndAmplitudes() {
    Stream.Builder<Arguments> cases = Stream.builder();
    for (Shaper shaper :
        new Shaper[] {
          new TanhShaper(),
          new CubicShaper(),
          new ArctangentShaper(),
          new QuadraticShaper(-0.2),
          new HardClipShaper(-3),
          new SoftClipShaper(-1, 4),
          new BiasedShaper(new TanhShaper(), 0.4),
          new BiasedShaper(new HardClipShaper(0), 0.3),
          new DrivenShaper(new SoftClipShaper(-6, 2), 7),
          new DrivenShaper(new BiasedShaper(new CubicShaper(), -0.2), 3)
        }) {
      for (double amplitude : new double[] {0.01, 0.5, 0.9, 1.3, 6}) {
        cases.add(Arguments.of(shaper, amplitude));
      }
    }
    return cases.build();
  }

  /** The plainest description: shape a million samples of a period and sum against sines. */
  @ParameterizedTest
  @MethodSource("shapersAndAmplitudes")
  void harmonics_againstADirectSum_agree(Shaper shaper, double amplitude) {
    int count = 12;
    int length = 1 << 18;
    double[] wave = new double[length];
    for (int i = 0; i < length; i++) {
      wave[i] = amplitude * Math.sin(2 * Math.PI * (i + 0.5) / length);
    }
    shaper.process(wave, 0, length);
    Harmonics harmonics = shaper.harmonicsOfSine(amplitude, count);
    for (int n = 0; n <= count; n++) {
      double sine = 0;
      double cosine = 0;
      for (int i = 0; i < length; i++) {
        double angle = 2 * Math.PI * n * (i + 0.5) / length;
        sine += wave[i] * Math.sin(angle) * 2 / length;
        cosine += wave[i] * Math.cos(angle) * 2 / length;
      }
      if (n == 0) {
        assertThat(harmonics.dcOffset()).isCloseTo(cosine / 2, within(TOLERANCE));
      } else {
        assertThat(harmonics.sineAmplitude(n)).as("b%s", n).isCloseTo(sine, within(TOLERANCE));
        assertThat(harmonics.cosineAmplitude(n)).as("a%s", n).isCloseTo(cosine, within(TOLERANCE));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("shapersAndAmplitudes")
  void exactFormula_againstQuadrature_agrees(Shaper shaper, double amplitude) {
    Harmonics exact = shaper.harmonicsOfSine(amplitude, 9);
    Harmonics quadrature = FourierIntegral.harmonics(shaper, amplitude, 9);
    for (int n = 1; n <= 9; n++) {
      assertThat(exact.sineAmplitude(n))
          .isCloseTo(quadrature.sineAmplitude(n), within(1e-12 * amplitude));
      assertThat(exact.cosineAmplitude(n))
          .isCloseTo(quadrature.cosineAmplitude(n), within(1e-12 * amplitude));
    }
  }

  @Test
  void phase_ofKnownWaves_isAgainstTheSine() {
    // x + k x² has −k/2 cos 2θ: a quarter turn behind; negative k a quarter turn ahead.
    assertThat(new QuadraticShaper(0.1).harmonicsOfSine(1, 2).phaseRadians(2))
        .isCloseTo(-Math.PI / 2, within(1e-12));
    assertThat(new QuadraticShaper(-0.1).harmonicsOfSine(1, 2).phaseRadians(2))
        .isCloseTo(Math.PI / 2, within(1e-12));
    // A rounded top: the third harmonic of tanh is in phase at the zero crossing.
    assertThat(new TanhShaper().harmonicsOfSine(1, 3).phaseRadians(3)).isZero();
  }

  @Test
  void tanh_atHugeDrive_tendsToTheSquareWave() {
    Harmonics harmonics = new TanhShaper().harmonicsOfSine(1e4, 9);
    for (int n = 1; n <= 9; n += 2) {
      assertThat(harmonics.sineAmplitude(n)).isCloseTo(4 / (Math.PI * n), within(1e-6));
    }
  }

  @Test
  void analyze_alignmentLevel_usesItsAmplitude() {
    double amplitude = Math.pow(10, -18.0 / 20);
    Harmonics harmonics = Harmonics.analyze(new CubicShaper(), -18, 3);
    assertThat(harmonics.sineAmplitude(3))
        .isCloseTo(amplitude * amplitude * amplitude / 12, within(1e-15));
    assertThat(harmonics.levelDbfs(3))
        .isCloseTo(20 * Math.log10(harmonics.amplitude(3)), within(1e-12));
    assertThat(harmonics.levelDbfs(2)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  @Test
  void harmonics_wrongArguments_throw() {
    Shaper shaper = new TanhShaper();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shaper.harmonicsOfSine(0, 3))
        .withMessageContaining("amplitude must be finite and above 0, but was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Harmonics.analyze(shaper, Double.NaN))
        .withMessageContaining("amplitude must be finite");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shaper.harmonicsOfSine(1, 0))
        .withMessageContaining("count must be at least 1, but was 0");
    Harmonics harmonics = shaper.harmonicsOfSine(1, 3);
    assertThatExceptionOfType(IndexOutOfBoundsException.class)
        .isThrownBy(() -> harmonics.amplitude(4));
    assertThatExceptionOfType(IndexOutOfBoundsException.class)
        .isThrownBy(() -> harmonics.amplitude(0));
  }

  /** Source: a mix is the weighted sum of its parts; the dry sine of 0 dBFS has amplitude 1. */
  @Test
  void harmonics_withDry_areTheWeightedSum() {
    Harmonics wet = new HardClipShaper(-6).harmonicsOfSine(1, 5);
    Harmonics mix = wet.withDry(0.25, 0);
    assertThat(mix.sineAmplitude(1))
        .isCloseTo(0.25 * wet.sineAmplitude(1) + 0.75, within(TOLERANCE));
    assertThat(mix.amplitude(3)).isCloseTo(0.25 * wet.amplitude(3), within(TOLERANCE));
    assertThat(wet.withDry(1, 0).amplitude(1)).isEqualTo(wet.amplitude(1));
    assertThat(wet.withDry(0, 0).thdShare()).isZero();
  }
}
