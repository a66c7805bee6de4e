package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.dynamics.StepResponse.Step;
import chainwright.dsp.reference.ReferenceTable;
import chainwright.dsp.reference.ReferenceTable.Row;
import java.util.Arrays;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class GainProcessorTest {

  private static final double TOLERANCE = 1e-9;
  private static final double RATE_HZ = 48000;

  private static double[] referenceSignal(int length) {
    double[] samples = new double[length];
    for (int n = 0; n < length; n++) {
      double t = n / RATE_HZ;
      double peakDb = t >= 0.1 && t < 0.3 ? -6 : -30;
      samples[n] = Math.pow(10, peakDb / 20) * Math.sin(2 * Math.PI * 1000 * t);
    }
    return samples;
  }

  @ParameterizedTest
  @EnumSource(Smoothing.class)
  void compressor_referenceRun_agreesInGainAndOutput(Smoothing smoothing) {
    String name = smoothing == Smoothing.BRANCHING ? "branching_smooth" : "decoupled_smooth";
    CompressorDesign design =
        new CompressorDesign(
            CompressorCurve.of(-24, 4, 6),
            new Detector.Peak(),
            new SmoothedBallistics(0.005, 0.08, smoothing));
    double[] input = referenceSignal(28800);
    Compressor forGain = design.newProcessor(RATE_HZ);
    double[] gain = Arrays.stream(input).map(forGain::gainDb).toArray();
    double[] output = input.clone();
    design.newProcessor(RATE_HZ).process(output, 0, output.length);
    for (Row row : ReferenceTable.read(GainProcessorTest.class, "full_chain.csv")) {
      int n = (int) row.number("n");
      assertThat(input[n]).as("input %s", n).isCloseTo(row.number("x"), within(1e-12));
      assertThat(gain[n])
          .as("gain %s", n)
          .isCloseTo(row.number("gain_db_" + name), within(TOLERANCE));
      assertThat(output[n])
          .as("output %s", n)
          .isCloseTo(row.number("y_" + name), within(TOLERANCE));
    }
  }

  static Stream<Supplier<GainProcessor>> processors() {
    Ballistics branching = new SmoothedBallistics(0.002, 0.05, Smoothing.BRANCHING);
    Ballistics twoStage = new TwoStageBallistics(0.002, 0.05, 0.6, 0.5);
    Stream.Builder<Supplier<GainProcessor>> all = Stream.builder();
    for (OverThresholdCurve curve :
        new OverThresholdCurve[] {
          new CompressorCurve(-24, 4, 6, 3),
          new LimiterCurve(-12, 2),
          new MaxReductionCurve(CompressorCurve.of(-30, 5, 3), 6),
          new DynamicBandCurve(-30, 2, 3, 4)
        }) {
      for (Detector detector : new Detector[] {new Detector.Peak(), new Detector.Rms(0.02)}) {
        for (Ballistics ballistics : new Ballistics[] {branching, twoStage}) {
          all.add(() -> new CompressorDesign(curve, detector, ballistics).newProcessor(RATE_HZ));
        }
      }
    }
    GateCurve gate = GateCurve.of(-20, 24, 4);
    all.add(() -> new GateDesign(gate, new Detector.Peak(), 1e-3, 0.03, 0.1).newProcessor(RATE_HZ));
    GateCurve expander = new GateCurve(-20, 2, 6, 12, 0);
    all.add(
        () -> new GateDesign(expander, new Detector.Rms(0.01), 1e-3, 0, 0.1).newProcessor(RATE_HZ));
    all.add(() -> new TransientShaperDesign(5, -4).newProcessor(RATE_HZ));
    return all.build();
  }

  private static double[] burstsOfNoise(long seed) {
    Random random = new Random(seed);
    double[] samples = new double[6000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = random.nextGaussian() * (i % 1500 < 700 ? 0.3 : 0.003);
    }
    return samples;
  }

  @ParameterizedTest
  @MethodSource("processors")
  void processor_anyBlockSize_givesTheSameSamples(Supplier<GainProcessor> supplier) {
    double[] whole = burstsOfNoise(7);
    supplier.get().process(whole, 0, whole.length);
    for (int block : new int[] {1, 7, 64, 1000}) {
      double[] parts = burstsOfNoise(7);
      GainProcessor processor = supplier.get();
      for (int at = 0; at < parts.length; at += block) {
        processor.process(parts, at, Math.min(block, parts.length - at));
      }
      assertThat(parts).as("blocks of %s", block).isEqualTo(whole);
    }
  }

  @ParameterizedTest
  @MethodSource("processors")
  void processor_reset_isAsNew(Supplier<GainProcessor> supplier) {
    double[] expected = burstsOfNoise(7);
    supplier.get().process(expected, 0, expected.length);
    GainProcessor used = supplier.get();
    double[] other = burstsOfNoise(8);
    used.process(other, 0, other.length);
    used.reset();
    double[] actual = burstsOfNoise(7);
    used.process(actual, 0, actual.length);
    assertThat(actual).isEqualTo(expected);
  }

  @ParameterizedTest
  @MethodSource("processors")
  void processor_nanSample_comesOutAloneAndCountsAsSilence(Supplier<GainProcessor> supplier) {
    double[] withNan = burstsOfNoise(7);
    double[] withZero = burstsOfNoise(7);
    withNan[100] = Double.NaN;
    withZero[100] = 0;
    supplier.get().process(withNan, 0, withNan.length);
    supplier.get().process(withZero, 0, withZero.length);
    assertThat(withNan[100]).isNaN();
    withNan[100] = withZero[100];
    assertThat(withNan).isEqualTo(withZero);
  }

  @ParameterizedTest
  @MethodSource("processors")
  void processor_silenceAndInfinity_leaveASoundState(Supplier<GainProcessor> supplier) {
    double[] samples = new double[400];
    GainProcessor processor = supplier.get();
    processor.process(samples, 0, 400);
    assertThat(samples).containsOnly(0.0);
    processor.gainDb(Double.POSITIVE_INFINITY);
    assertThat(processor.gainDb(0.1)).isFinite();
    processor.process(samples, 400, 0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> processor.process(samples, 399, 2))
        .withMessageContaining("must lie within the array of 400 samples");
  }

  @Test
  void compressor_otherKey_followsTheKey() {
    CompressorDesign design =
        new CompressorDesign(
            CompressorCurve.of(-20, 4, 0),
            new Detector.Peak(),
            new SmoothedBallistics(0, 0, Smoothing.BRANCHING));
    double[] samples = {0.5, 0.5, -0.5};
    // 0 dB is 20 dB over the threshold, of which 4:1 leaves 5 dB: 15 dB of reduction.
    design.newProcessor(RATE_HZ).process(samples, new double[] {1, 0.01, -1}, 0, 3);
    double reduced = 0.5 * Math.pow(10, -15.0 / 20);
    assertThat(samples).containsExactly(new double[] {reduced, 0.5, -reduced}, within(1e-12));
  }

  @Test
  void gate_levelBetweenItsThresholds_keepsItsState() {
    Gate gate = gate(0);
    assertThat(gate.gainOfLevelDb(-42)).isEqualTo(-20);
    assertThat(gate.isOpen()).isFalse();
    gate.gainOfLevelDb(-40);
    assertThat(gate.isOpen()).isTrue();
    assertThat(gate.gainOfLevelDb(-42)).isZero();
    assertThat(gate.isOpen()).isTrue();
    gate.gainOfLevelDb(-44.1);
    assertThat(gate.isOpen()).isFalse();
    assertThat(gate.gainOfLevelDb(-42)).isEqualTo(-20);
  }

  @Test
  void gate_hold_staysOpenForAtLeastTheHold() {
    Gate gate = gate(0.01);
    gate.gainOfLevelDb(-30);
    int open = 0;
    while (gate.gainOfLevelDb(-80) == 0) {
      open++;
    }
    assertThat(open).isEqualTo(480);
    assertThat(gate.isOpen()).isFalse();
    assertThat(gate.gainOfLevelDb(-80)).as("the range is the floor").isEqualTo(-20);
  }

  private static Gate gate(double holdSeconds) {
    return new GateDesign(GateCurve.of(-40, 20, 4), new Detector.Peak(), 0, holdSeconds, 0)
        .newProcessor(RATE_HZ);
  }

  @Test
  void gate_stepResponse_opensWithAttackAndClosesWithRelease() {
    GateDesign design =
        new GateDesign(GateCurve.of(-40, 20, 4), new Detector.Peak(), 0.002, 0.05, 0.1);
    StepResponse response = StepResponse.analyze(design, new Step(-70, -20, 0.1, 0.4), RATE_HZ);
    assertThat(response.size()).isEqualTo(24000);
    assertThat(response.releaseIndex()).isEqualTo(4800);
    assertThat(response.timeSeconds(4800)).isEqualTo(0.1);
    assertThat(response.gainDb(95)).isCloseTo(-20 * Math.exp(-1), within(1e-9));
    int closing = 4800 + 2400;
    assertThat(response.gainDb(closing - 1)).isCloseTo(0, within(1e-9));
    assertThat(response.gainDb(closing + 4799)).isCloseTo(-20 * (1 - Math.exp(-1)), within(1e-9));
  }
}
