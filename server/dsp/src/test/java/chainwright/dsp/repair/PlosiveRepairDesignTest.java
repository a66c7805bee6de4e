package chainwright.dsp.repair;

import static chainwright.dsp.repair.Sounds.RATE_HZ;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Properties of a method that has no reference figures; the waves are ours. */
class PlosiveRepairDesignTest {

  private static final int FRAMES = (int) (2 * RATE_HZ);
  private static final int THUMP_AT = 40_000;

  private static PlosiveRepairDesign design(double reductionDb) {
    return new PlosiveRepairDesign(SampleRate.ofHertz(RATE_HZ), reductionDb, 0.08, 150);
  }

  /** Returns a wave under a Hann window. */
  private static double[] burst(int frames, int at, double hertz, double seconds, double rateHz) {
    double[] burst = new double[frames];
    int length = (int) (seconds * rateHz);
    for (int i = 0; i < length; i++) {
      burst[at + i] =
          0.5
              * Math.pow(Math.sin(Math.PI * i / length), 2)
              * Math.sin(2 * Math.PI * hertz * i / rateHz);
    }
    return burst;
  }

  private static double[] thump() {
    return burst(FRAMES, THUMP_AT, 30, 0.07, RATE_HZ);
  }

  /** A voice with a fundamental and nine harmonics, falling by 6 dB an octave, that goes on. */
  private static double[] bassVoice(double hertz) {
    double[] voice = new double[FRAMES];
    for (int i = 2_000; i < FRAMES - 2_000; i++) {
      for (int k = 1; k <= 10; k++) {
        voice[i] += 0.2 / k * Math.sin(2 * Math.PI * hertz * k * i / RATE_HZ);
      }
    }
    return voice;
  }

  private static double dbAgainst(double[] before, double[] after) {
    return 10
        * Math.log10(Sounds.power(after, 0, after.length) / Sounds.power(before, 0, before.length));
  }

  /** A thump far below the frequency falls by the reduction, less what the low-pass lacks there. */
  @ParameterizedTest
  @ValueSource(doubles = {3, 6, 12, 18})
  void thump_aloneOrInNoise_fallsByTheReduction(double reductionDb) {
    double[] thump = thump();
    double[] out = Sounds.render(design(reductionDb), thump)[0];
    assertThat(dbAgainst(thump, out)).isCloseTo(-reductionDb, within(0.1 * reductionDb));
    double[] noise = Sounds.noise(FRAMES, -60, 1);
    double[] noisy = Sounds.render(design(reductionDb), Sounds.sum(thump, noise))[0];
    for (int i = 0; i < FRAMES; i++) {
      noisy[i] -= noise[i];
    }
    assertThat(dbAgainst(thump, noisy)).isCloseTo(-reductionDb, within(0.1 * reductionDb));
  }

  @Test
  void sound_awayFromAThump_comesOutBitForBit() {
    double[] damaged = Sounds.sum(thump(), Sounds.noise(FRAMES, -60, 2));
    double[] out = Sounds.render(design(12), damaged)[0];
    int end = THUMP_AT + (int) (0.07 * RATE_HZ);
    assertThat(Arrays.copyOf(out, THUMP_AT - 2_000))
        .isEqualTo(Arrays.copyOf(damaged, THUMP_AT - 2_000));
    assertThat(Arrays.copyOfRange(out, end + 2_000, FRAMES))
        .isEqualTo(Arrays.copyOfRange(damaged, end + 2_000, FRAMES));
    assertThat(Arrays.equals(out, damaged)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {45, 80, 110, 200})
  void bassVoice_thatGoesOn_comesOutBitForBit(double hertz) {
    double[] voice = bassVoice(hertz);
    assertThat(Sounds.render(design(24), voice)[0]).isEqualTo(voice);
  }

  @Test
  void syllables_ofAVoice_comeOutBitForBit() {
    double[] voice = Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -60, 3));
    assertThat(Sounds.render(design(24), voice)[0]).isEqualTo(voice);
  }

  @Test
  void lowSound_longerThanMeant_isLeftAlone() {
    double[] hum = new double[FRAMES];
    for (int i = 0; i < (int) (0.13 * RATE_HZ); i++) {
      hum[THUMP_AT + i] = 0.5 * Math.sin(2 * Math.PI * 60 * i / RATE_HZ);
    }
    assertThat(Sounds.render(design(12), hum)[0]).isEqualTo(hum);
  }

  /** The fundamental alone is 20 lg (0.6 / 0.5) dB over the thump. */
  @ParameterizedTest
  @CsvSource({"0, -9", "-6, -6"})
  void thump_underALouderHighBand_falls(double levelDb, double mostDb) {
    double[] thump = scaled(thump(), levelDb);
    double[] voice = scaled(bassVoice(500), 20 * Math.log10(3));
    double[] out = Sounds.render(design(12), Sounds.sum(thump, voice))[0];
    assertThat(dbAgainst(thump, Sounds.sum(out, scaled(voice, 0, -1)))).isLessThan(mostDb);
  }

  @Test
  void thump_farUnderTheHighBand_isLeftAlone() {
    double[] voice = scaled(bassVoice(500), 20 * Math.log10(3));
    double[] wave = Sounds.sum(scaled(thump(), -18), voice);
    assertThat(Sounds.render(design(12), wave)[0]).isEqualTo(wave);
  }

  /** The syllables have an RMS near -20 dB; a thump stands in each gap, up to the next. */
  @ParameterizedTest
  @CsvSource({"-12, -9", "-18, -9", "-24, -8", "-30, -3"})
  void thump_beforeASyllable_fallsAlsoWhereItIsSoft(double peakDbfs, double mostDb) {
    double[] voice = Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -60, 8));
    double[] thumps = thumpsBeforeSyllables(peakDbfs);
    double[] out = Sounds.render(design(12), Sounds.sum(voice, thumps))[0];
    assertThat(dbAgainst(thumps, Sounds.sum(out, scaled(voice, 0, -1)))).isLessThan(mostDb);
  }

  @Test
  void thump_farUnderWhatWasLoudOfLate_isLeftAlone() {
    double[] voice = Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -60, 9));
    double[] wave = Sounds.sum(voice, thumpsBeforeSyllables(-45));
    assertThat(Sounds.render(design(12), wave)[0]).isEqualTo(wave);
  }

  private static double[] thumpsBeforeSyllables(double peakDbfs) {
    double[] thumps = new double[FRAMES];
    double toPeak = peakDbfs - 20 * Math.log10(0.5);
    for (double at = 0.73; at < 1.9; at += 0.4) {
      double[] one = burst(FRAMES, (int) (at * RATE_HZ), 40, 0.06, RATE_HZ);
      thumps = Sounds.sum(thumps, scaled(one, toPeak));
    }
    return thumps;
  }

  private static double[] scaled(double[] wave, double db) {
    return scaled(wave, db, 1);
  }

  private static double[] scaled(double[] wave, double db, int sign) {
    double factor = sign * Math.pow(10, db / 20);
    return Arrays.stream(wave).map(x -> factor * x).toArray();
  }

  /** What is low-passed at 25 Hz wavers by more than 6 dB all the time. */
  @Test
  void rumble_underAVoice_comesOutBitForBit() {
    double[] rumble = Sounds.noise(FRAMES, -20, 10);
    for (int pass = 0; pass < 2; pass++) {
      double state = 0;
      for (int i = 0; i < FRAMES; i++) {
        state += 2 * Math.PI * 25 / RATE_HZ * (rumble[i] - state);
        rumble[i] = state;
      }
    }
    assertThat(10 * Math.log10(Sounds.power(rumble, 0, FRAMES))).isBetween(-58.0, -50.0);
    double[] wave = Sounds.sum(Sounds.syllables(FRAMES), rumble);
    assertThat(Sounds.render(design(12), wave)[0]).isEqualTo(wave);
  }

  @Test
  void reduction_ofNothing_passesBitForBit() {
    double[] damaged = Sounds.sum(thump(), Sounds.noise(FRAMES, -60, 4));
    assertThat(Sounds.render(design(0), damaged)[0]).isEqualTo(damaged);
  }

  @Test
  void channel_withAThump_leavesTheOtherAlone() {
    double[] noise = Sounds.noise(FRAMES, -60, 5);
    double[] damaged = Sounds.sum(thump(), noise);
    double[][] out = Sounds.render(design(12), noise, damaged);
    assertThat(out[0]).isEqualTo(noise);
    assertThat(out[1]).isEqualTo(Sounds.render(design(12), damaged)[0]);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 511, 513, 200_000})
  void blocks_ofAnySize_changeNoBitAndResetIsAsNew(int block) {
    double[] damaged = Sounds.sum(thump(), Sounds.noise(FRAMES, -60, 6));
    PlosiveRepairDesign design = design(12);
    double[][] whole = Sounds.render(design, damaged);
    Processor processor = design.newProcessor(Wiring.ofChannels(1));
    assertThat(Sounds.render(processor, design, block, damaged)).isDeepEqualTo(whole);
    processor.reset();
    assertThat(Sounds.render(processor, design, block, damaged)).isDeepEqualTo(whole);
  }

  /** What lasts 1 ms lies for the most part over 20 Hz, so there is no such thump to be lowered. */
  @Test
  void click_shorterThanAWaveBelow_isLeftAlone() {
    double rateHz = 8_000;
    PlosiveRepairDesign design = new PlosiveRepairDesign(SampleRate.ofHertz(rateHz), 60, 0.001, 20);
    double[] click = burst(4_000, 2_000, 1_000, 0.001, rateHz);
    assertThat(Sounds.render(design, click)[0]).isEqualTo(click);
  }

  /** The other ends of each setting that can be written, at the lowest and highest rate. */
  @ParameterizedTest
  @CsvSource({
    "8000, 0.001, 1000", "8000, 0.5, 1000", "8000, 0.5, 20",
    "384000, 0.001, 1000", "384000, 0.5, 20", "384000, 0.5, 1000"
  })
  void settings_atEitherLimit_lowerAThumpAndStayFinite(
      double rateHz, double longestSeconds, double belowHertz) {
    PlosiveRepairDesign design =
        new PlosiveRepairDesign(SampleRate.ofHertz(rateHz), 60, longestSeconds, belowHertz);
    double seconds = 0.7 * longestSeconds;
    int frames = 4 * design.latencyFrames();
    double[] thump =
        burst(frames, frames / 3, Math.min(1 / seconds, belowHertz / 8), seconds, rateHz);
    double[] out = Sounds.render(design, thump)[0];
    assertThat(Arrays.stream(out).allMatch(Double::isFinite)).isTrue();
    assertThat(dbAgainst(thump, out)).isLessThan(0);
  }

  @Test
  void sample_thatIsNone_comesOutInItsPlace() {
    double[] wave = Sounds.noise(FRAMES, -60, 7);
    double[] expected = wave.clone();
    wave[30_000] = Double.NaN;
    wave[50_000] = Double.POSITIVE_INFINITY;
    expected[30_000] = Double.NaN;
    expected[50_000] = Double.POSITIVE_INFINITY;
    assertThat(Sounds.render(design(12), wave)[0]).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -0.0, 0.25, Double.MIN_VALUE, -1e-310})
  void constant_ofAnySize_comesOutBitForBit(double value) {
    double[] wave = new double[20_000];
    Arrays.fill(wave, value);
    assertThat(Sounds.render(design(12), wave)[0]).isEqualTo(wave);
  }

  @Test
  void design_outsideItsRange_throws() {
    assertThatThrownBy(() -> design(101))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageEndingWith("but were 101.0, 0.08 and 150.0");
  }
}
