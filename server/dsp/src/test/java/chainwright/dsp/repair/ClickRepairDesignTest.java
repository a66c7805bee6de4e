package chainwright.dsp.repair;

import static chainwright.dsp.repair.Sounds.RATE_HZ;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Properties of a method that has no reference figures; the bounds are ours, from a first run. */
class ClickRepairDesignTest {

  private static final int FRAMES = (int) (2 * RATE_HZ);
  private static final int SPACING = 7_919;

  private static ClickRepairDesign design() {
    return new ClickRepairDesign(SampleRate.ofHertz(RATE_HZ), 0.002);
  }

  private static double[] tone(int frames, double hertz, double rateHz) {
    double[] tone = Sounds.noise(frames, -100, 1);
    for (int i = 0; i < frames; i++) {
      tone[i] += 0.3 * Math.sin(2 * Math.PI * hertz * i / rateHz);
    }
    return tone;
  }

  /** Noise through a pair of poles at 960 Hz, as strong as the tone. */
  private static double[] resonance() {
    double[] out = Sounds.noise(FRAMES, -43, 2);
    double radius = 0.98;
    for (int i = 2; i < FRAMES; i++) {
      out[i] +=
          2 * radius * Math.cos(2 * Math.PI * 0.02) * out[i - 1] - radius * radius * out[i - 2];
    }
    return out;
  }

  private static double[] wave(String kind) {
    return switch (kind) {
      case "tone" -> tone(FRAMES, 440, RATE_HZ);
      case "resonance" -> resonance();
      default -> Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -60, 3));
    };
  }

  /** Returns clicks of a length: a decaying wave of 3.5 kHz, or one sample. */
  private static double[] clicks(int length) {
    double[] clicks = new double[FRAMES];
    for (int at = SPACING; at < FRAMES - SPACING; at += SPACING) {
      for (int i = 0; i < length; i++) {
        double seconds = i / RATE_HZ;
        clicks[at + i] = 0.3 * Math.cos(2 * Math.PI * 3500 * seconds) * Math.exp(-seconds / 0.0003);
      }
    }
    return clicks;
  }

  @ParameterizedTest
  @ValueSource(strings = {"tone", "resonance", "syllables"})
  void wave_withoutClicks_comesOutBitForBit(String kind) {
    double[] wave = wave(kind);
    assertThat(Sounds.render(design(), wave)[0]).isEqualTo(wave);
  }

  /** All of them, nothing else, and what is left of their power at most so much. */
  @ParameterizedTest
  @CsvSource({"tone, 1, 70", "tone, 60, 55", "resonance, 1, 26", "resonance, 60, 1.5"})
  void click_inAWave_isFoundAndRebuilt(String kind, int length, double leastDb) {
    double[] wave = wave(kind);
    double[] clicks = clicks(length);
    double[] damaged = Sounds.sum(wave, clicks);
    double[] out = Sounds.render(design(), damaged)[0];
    double before = 0;
    double after = 0;
    for (int at = SPACING; at < FRAMES - SPACING; at += SPACING) {
      assertThat(out[at]).as("click at %d", at).isNotEqualTo(damaged[at]);
    }
    for (int i = 0; i < FRAMES; i++) {
      int place = i % SPACING;
      if (place > length + 70 && place < SPACING - 20) {
        assertThat(out[i]).as("frame %d", i).isEqualTo(damaged[i]);
      }
      before += clicks[i] * clicks[i];
      after += (out[i] - wave[i]) * (out[i] - wave[i]);
    }
    assertThat(10 * Math.log10(before / after)).isGreaterThan(leastDb);
  }

  @Test
  void fault_longerThanMeant_isLeftAlone() {
    double[] wave = tone(FRAMES, 440, RATE_HZ);
    double[] burst = Sounds.noise(480, -20, 4);
    for (int i = 0; i < burst.length; i++) {
      wave[40_000 + i] += burst[i];
    }
    assertThat(Sounds.render(design(), wave)[0]).isEqualTo(wave);
  }

  @Test
  void sound_thatBegins_isNoClick() {
    double[] wave = tone(FRAMES, 440, RATE_HZ);
    Arrays.fill(wave, 0, 30_031, 0);
    assertThat(Sounds.render(design(), wave)[0]).isEqualTo(wave);
  }

  @Test
  void channel_withAClick_leavesTheOtherAlone() {
    double[] wave = tone(FRAMES, 440, RATE_HZ);
    double[] damaged = Sounds.sum(wave, clicks(1));
    double[][] out = Sounds.render(design(), wave, damaged);
    assertThat(out[0]).isEqualTo(wave);
    assertThat(out[1]).isEqualTo(Sounds.render(design(), damaged)[0]);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2041, 2043, 100_000})
  void blocks_ofAnySize_changeNoBit(int block) {
    double[] damaged = Arrays.copyOf(Sounds.sum(wave("tone"), clicks(60)), 20_000);
    ClickRepairDesign design = design();
    double[][] whole = Sounds.render(design, damaged);
    assertThat(Sounds.render(design.newProcessor(Wiring.ofChannels(1)), design, block, damaged))
        .isDeepEqualTo(whole);
  }

  @Test
  void reset_afterAClick_isAsNew() {
    double[] damaged = Arrays.copyOf(Sounds.sum(wave("tone"), clicks(60)), 20_011);
    ClickRepairDesign design = design();
    Processor processor = design.newProcessor(Wiring.ofChannels(1));
    double[][] first = Sounds.render(processor, design, 4096, damaged);
    processor.reset();
    assertThat(Sounds.render(processor, design, 4096, damaged)).isDeepEqualTo(first);
  }

  /** A wave that prediction knows almost wholly, where the equations are worst to solve. */
  @ParameterizedTest
  @CsvSource({"20, 48000", "440, 48000", "20, 384000", "3400, 8000"})
  void click_inAPureTone_isRebuilt(double hertz, double rateHz) {
    ClickRepairDesign design = new ClickRepairDesign(SampleRate.ofHertz(rateHz), 0.05);
    int frames = 4 * design.latencyFrames();
    double[] wave = new double[frames];
    for (int i = 0; i < frames; i++) {
      wave[i] = 0.3 * Math.sin(2 * Math.PI * hertz * i / rateHz);
    }
    double[] damaged = wave.clone();
    damaged[frames / 2 + 11] += 0.3;
    double[] out = Sounds.render(design, damaged)[0];
    double errorBeforeDb = Sounds.errorDb(wave, damaged, 0, frames);
    assertThat(Sounds.errorDb(wave, out, 0, frames)).isLessThan(errorBeforeDb - 20);
  }

  /** The shortest and the longest click that can be written, at the lowest and highest rate. */
  @ParameterizedTest
  @CsvSource({"8000, 0.00005", "8000, 0.05", "384000, 0.00005", "384000, 0.05"})
  void click_atEitherLimit_isRebuilt(double rateHz, double longestSeconds) {
    ClickRepairDesign design = new ClickRepairDesign(SampleRate.ofHertz(rateHz), longestSeconds);
    int frames = 4 * design.latencyFrames();
    double[] wave = tone(frames, 440, rateHz);
    double[] damaged = wave.clone();
    damaged[frames / 2 + 11] += 0.3;
    double[] out = Sounds.render(design, damaged)[0];
    double errorBeforeDb = Sounds.errorDb(wave, damaged, 0, frames);
    assertThat(Sounds.errorDb(wave, out, 0, frames)).isLessThan(errorBeforeDb - 20);
  }

  @Test
  void sample_thatIsNone_comesOutInItsPlace() {
    double[] wave = tone(FRAMES, 440, RATE_HZ);
    double[] expected = wave.clone();
    wave[30_000] = Double.NaN;
    double[] out = Sounds.render(design(), wave)[0];
    assertThat(out[30_000]).isNaN();
    assertThat(Arrays.copyOf(out, 29_900)).isEqualTo(Arrays.copyOf(expected, 29_900));
    assertThat(Arrays.copyOfRange(out, 30_200, FRAMES))
        .isEqualTo(Arrays.copyOfRange(expected, 30_200, FRAMES));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.25, Double.MIN_VALUE, -1e-310})
  void constant_ofAnySize_comesOutBitForBit(double value) {
    double[] wave = new double[20_000];
    Arrays.fill(wave, value);
    assertThat(Sounds.render(design(), wave)[0]).isEqualTo(wave);
  }

  @Test
  void design_outsideItsRange_throws() {
    assertThatThrownBy(() -> new ClickRepairDesign(SampleRate.ofHertz(RATE_HZ), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the longest click must be above 0 and at most 0.1 s long, but was 0.0");
  }
}
