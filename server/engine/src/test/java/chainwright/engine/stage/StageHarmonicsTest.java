package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.nonlinear.Harmonics;
import chainwright.engine.WrittenChain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The harmonics that stages written as text add to a sine. */
class StageHarmonicsTest {

  /** The drive is solved to that much of the distortion as written. */
  private static final double THD_SHARE = 1e-6;

  /** The alignment level [dBFS]. Source: EBU R 68-2000. */
  private static final double ALIGNMENT_DBFS = -18;

  @ParameterizedTest
  @ValueSource(strings = {"symmetric", "asymmetric", "tape", "transformer", "valve"})
  void saturation_atAlignment_distortsAsWritten(String character) {
    check("saturation " + character + " drive 0 dB thd-at-alignment 1 %", ALIGNMENT_DBFS, 0.01);
    check("saturation " + character + " drive 0 dB", ALIGNMENT_DBFS, 0.003);
    // Drive raises the programme by as much: 6 dB lower, it stands where alignment stood.
    check("saturation " + character + " drive 6 dB", ALIGNMENT_DBFS - 6, 0.003);
  }

  /** Beside the dry sine only the fundamental stays; a small share of 1 % lets it stay as it is. */
  @Test
  void saturation_blendedByHalf_hasHalfTheHarmonics() {
    Harmonics all = harmonics("saturation valve drive 0 dB", ALIGNMENT_DBFS);
    Harmonics half = harmonics("saturation valve drive 0 dB blend 50 %", ALIGNMENT_DBFS);
    double dry = Math.pow(10, ALIGNMENT_DBFS / 20);
    assertThat(half.amplitude(2)).isCloseTo(all.amplitude(2) / 2, within(1e-12));
    assertThat(half.sineAmplitude(1)).isCloseTo((all.sineAmplitude(1) + dry) / 2, within(1e-12));
  }

  @Test
  void saturation_byCharacter_hasOddOrEvenHarmonics() {
    assertThat(harmonics("saturation symmetric", ALIGNMENT_DBFS).amplitude(2)).isLessThan(1e-12);
    assertThat(harmonics("saturation asymmetric", ALIGNMENT_DBFS).amplitude(2)).isGreaterThan(1e-6);
    assertThat(harmonics("saturation asymmetric asymmetry 0 %", ALIGNMENT_DBFS).amplitude(2))
        .isLessThan(1e-12);
  }

  @Test
  void saturation_withoutDistortion_addsNothing() {
    assertThat(WrittenChain.soundOf("saturation tape thd-at-alignment 0 %").harmonics()).isEmpty();
  }

  /**
   * Source: the Fourier integral of a sine clipped at half its peak, {@code (2/pi)(d asin(1/d) +
   * sqrt(1 - 1/d^2))} with d = 2: 1.2180 times the ceiling, 1.713 dB above it.
   */
  @ParameterizedTest
  @CsvSource({"0, 1.7129", "-6, -4.2871"})
  void clipper_sineOfTwiceTheCeiling_leavesItsFundamental(double ceilingDbfs, double expectedDbfs) {
    String line = "clipper ceiling " + ceilingDbfs + " dBFS knee 0 dB";
    double levelDbfs = ceilingDbfs + 20 * Math.log10(2);
    assertThat(harmonics(line, levelDbfs).levelDbfs(1)).isCloseTo(expectedDbfs, within(0.0001));
  }

  @Test
  void clipper_sineBelowItsKnee_isLeftAlone() {
    check("clipper ceiling -1 dBFS knee 6 dB", -7.1, 0);
    assertThat(harmonics("clipper ceiling -1 dBFS knee 6 dB", -6).thdShare()).isPositive();
  }

  private static void check(String line, double levelDbfs, double thdShare) {
    assertThat(harmonics(line, levelDbfs).thdShare())
        .as("%s at %s dBFS", line, levelDbfs)
        .isCloseTo(thdShare, within(THD_SHARE));
  }

  private static Harmonics harmonics(String line, double levelDbfs) {
    return WrittenChain.soundOf(line)
        .harmonics()
        .orElseThrow()
        .harmonics(1000, levelDbfs, Harmonics.THD_COUNT);
  }
}
