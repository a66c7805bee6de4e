package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Processors put together. */
class StructuresTest {

  private static final int FRAMES = 2_000;

  /** Waits, and says that it does. */
  private record Late(int latencyFrames) implements ProcessorDesign {
    @Override
    public Processor newProcessor(Wiring wiring) {
      return new DelayLine(wiring.channelCount(), latencyFrames);
    }
  }

  private static double[][] run(ProcessorDesign design, double[][] signal) {
    double[][] out = Arrays.stream(signal).map(double[]::clone).toArray(double[][]::new);
    design.newProcessor(Wiring.ofChannels(out.length)).process(out, 0, out[0].length);
    return out;
  }

  private static double[][] ramp(int channelCount) {
    double[][] signal = new double[channelCount][FRAMES];
    for (int c = 0; c < channelCount; c++) {
      for (int i = 0; i < FRAMES; i++) {
        signal[c][i] = (c + 1) * (i + 1);
      }
    }
    return signal;
  }

  @Test
  void sum_ofPathsWithLatency_addsThemInTime() {
    SumDesign sum = new SumDesign(List.of(new FactorDesign(1), new Late(700), new Late(3)));
    assertThat(sum.latencyFrames()).isEqualTo(700);
    double[][] out = run(sum, ramp(1));
    assertThat(out[0][699]).isZero();
    assertThat(out[0][700]).isEqualTo(3);
    assertThat(out[0][1999]).isEqualTo(3 * 1300);
  }

  @Test
  void blend_ofHalfALateSignal_keepsTheLevel() {
    double[][] out = run(SumDesign.ofBlend(new Late(50), 0.25), ramp(1));
    assertThat(out[0][1050]).isEqualTo(1001);
  }

  @Test
  void midSide_withWires_givesBackBothChannelsEquallyLate() {
    double[][] out = run(new MidSideDesign(new Late(600), new FactorDesign(1)), ramp(3));
    double[][] ramp = ramp(3);
    for (int c = 0; c < 3; c++) {
      assertThat(out[c][1600]).isEqualTo(ramp[c][1000]);
    }
  }

  @Test
  void midSide_withoutSide_leavesWhatBothShare() {
    double[][] out = run(new MidSideDesign(new FactorDesign(1), new FactorDesign(0)), ramp(2));
    assertThat(out[0]).isEqualTo(out[1]);
    assertThat(out[0][99]).isEqualTo(150);
  }

  @Test
  void passage_ofAGain_actsInsideAloneAndChangesSoftly() {
    double[][] ones = new double[1][FRAMES];
    Arrays.fill(ones[0], 1);
    double[] out = run(new PassageDesign(new FactorDesign(0.5), 100, 900, 100), ones)[0];
    assertThat(out[99]).isEqualTo(1);
    assertThat(out[150]).isEqualTo(0.75, within(0.01));
    assertThat(out[200]).isEqualTo(0.5);
    assertThat(out[799]).isEqualTo(0.5);
    assertThat(out[900]).isEqualTo(1);
    double largestStep = 0;
    for (int i = 1; i < FRAMES; i++) {
      largestStep = Math.max(largestStep, Math.abs(out[i] - out[i - 1]));
    }
    // The steepest step of a raised cosine of height 1/2 over 100 frames.
    assertThat(largestStep).isLessThan(0.5 * Math.PI / 2 / 100 + 1e-9);
  }

  @Test
  void passage_ofALateProcessor_staysWhereItIsMeant() {
    ProcessorDesign late = new SeriesDesign(List.of(new Late(40), new FactorDesign(0)));
    double[] out = run(new PassageDesign(late, 100, 200, 0), ramp(1))[0];
    assertThat(out[139]).isEqualTo(100);
    assertThat(out[140]).isZero();
    assertThat(out[239]).isZero();
    assertThat(out[240]).isEqualTo(201);
  }

  @Test
  void wiring_withoutOtherSignals_saysThatThereIsNone() {
    assertThatThrownBy(() -> Wiring.ofChannels(1).keys().find("kick"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("`kick`");
  }
}
