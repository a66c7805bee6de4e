package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.CascadeFilter;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.filter.FilterCascade;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import com.google.gson.JsonObject;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class LevelMatchTest {

  private static final SampleRate RATE = SampleRate.ofHertz(44_100);
  private static final double LOUDNESS_LU = 0.01;
  private static final double ANY = Double.POSITIVE_INFINITY;

  /** Source: reference data, see ORIGIN.md in the resources. */
  @Test
  void gain_ofEqualisedNoise_isTheReferences() {
    JsonObject expected =
        LoudnessCases.read("level_match.json").getAsJsonArray("cases").get(0).getAsJsonObject();
    double[][] before =
        LoudnessCases.signal(LoudnessCases.named(expected.get("signal").getAsString()));
    double[][] after = Arrays.stream(before).map(double[]::clone).toArray(double[][]::new);
    Arrays.stream(after).forEach(LevelMatchTest::equalise);
    SignalReading first = measure(before);
    SignalReading second = measure(after);
    LevelMatch match =
        LevelMatch.to(
            first.loudness().integratedLufs(),
            second.loudness().integratedLufs(),
            second.annex2Dbtp(),
            ANY);
    assertThat(second.loudness().integratedLufs())
        .isCloseTo(
            expected.getAsJsonObject("after").get("integrated_lufs").getAsDouble(),
            within(LOUDNESS_LU));
    assertThat(match.gainDb())
        .isCloseTo(expected.get("match_gain_db").getAsDouble(), within(LOUDNESS_LU));
    assertThat(match.heldBackDb()).isZero();
    assertThat(rmsDbfs(first) - rmsDbfs(second))
        .isCloseTo(expected.get("rms_match_gain_db").getAsDouble(), within(LOUDNESS_LU));
    double[][] matched =
        Arrays.stream(after)
            .map(channel -> TestSignal.scaled(channel, TestSignal.factor(match.gainDb())))
            .toArray(double[][]::new);
    assertThat(measure(matched).loudness().integratedLufs())
        .isCloseTo(
            expected.getAsJsonObject("after_matched").get("integrated_lufs").getAsDouble(),
            within(LOUDNESS_LU));
  }

  private static void equalise(double[] samples) {
    filter(
        samples,
        EqualiserPrototypes.highPass(Frequency.ofHertz(80), new QualityFactor(0.7071)),
        EqualiserPrototypes.bell(Frequency.ofHertz(3000), new Decibels(6), new QualityFactor(1)),
        EqualiserPrototypes.highShelf(
            Frequency.ofHertz(8000),
            new Decibels(4),
            EqualiserPrototypes.shelfQuality(1, new Decibels(4))));
  }

  private static void filter(double[] samples, AnaloguePrototype... prototypes) {
    for (AnaloguePrototype prototype : prototypes) {
      FilterCascade design = Curve.BILINEAR.design(prototype, RATE);
      new CascadeFilter(design, 1).process(new double[][] {samples}, 0, samples.length);
    }
  }

  private static SignalReading measure(double[][] signal) {
    SignalMeter meter =
        new SignalMeter(
            RATE, ChannelPosition.usual(signal.length), LevelMeter.FLOATING_POINT_FULL_SCALE);
    meter.process(signal, 0, signal[0].length);
    return meter.measure();
  }

  /** The level of all channels together. */
  private static double rmsDbfs(SignalReading reading) {
    return 10
        * Math.log10(
            reading.levels().stream()
                .mapToDouble(levels -> Math.pow(10, levels.rmsDbfs() / 10))
                .average()
                .orElseThrow());
  }

  @Test
  void gain_thatWouldLiftThePeakOverTheCeiling_isHeldBack() {
    assertThat(LevelMatch.to(-14, -20, -4, -1)).isEqualTo(new LevelMatch(3, 3));
    assertThat(LevelMatch.to(-14, -20, 2, -1)).isEqualTo(new LevelMatch(0, 6));
    assertThat(LevelMatch.to(-20, -14, 2, -1)).isEqualTo(new LevelMatch(-6, 0));
  }

  @Test
  void gain_whereOneIsSilentOrTooShort_isNone() {
    assertThat(LevelMatch.to(Double.NEGATIVE_INFINITY, -20, -4, -1)).isEqualTo(LevelMatch.NONE);
    assertThat(LevelMatch.to(-20, Double.NEGATIVE_INFINITY, -4, -1)).isEqualTo(LevelMatch.NONE);
    assertThat(LevelMatch.to(Double.NaN, -20, -4, -1)).isEqualTo(LevelMatch.NONE);
  }

  @Test
  void comparison_turnsTheLouderDownAndLeavesTheSofter() {
    assertThat(LevelMatch.turningDown(-14, -20)).isEqualTo(new LevelMatch(-6, 0));
    assertThat(LevelMatch.turningDown(-20, -14)).isEqualTo(LevelMatch.NONE);
    assertThat(LevelMatch.turningDown(-20, Double.NaN)).isEqualTo(LevelMatch.NONE);
  }
}
