package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransientShaperTest {

  private static final double RATE_HZ = 48000;

  /** A tone that begins at once, stands for 0.6 s and dies away at 400 dB a second. */
  private static double[] struckTone(double peak) {
    double[] samples = new double[48000];
    for (int i = 0; i < samples.length; i++) {
      double t = i / RATE_HZ;
      double level = t < 0.6 ? 1 : Math.pow(10, -400 * (t - 0.6) / 20);
      samples[i] = peak * level * Math.sin(2 * Math.PI * 1000 * t);
    }
    return samples;
  }

  private static double[] gains(double onsetDb, double tailDb, double peak) {
    TransientShaper shaper = new TransientShaperDesign(onsetDb, tailDb).newProcessor(RATE_HZ);
    double[] gains = struckTone(peak);
    for (int i = 0; i < gains.length; i++) {
      gains[i] = shaper.gainDb(gains[i]);
    }
    return gains;
  }

  @ParameterizedTest
  @CsvSource({"6, 0", "-6, 0", "0, 5", "0, -5", "4, -3"})
  void shaper_struckTone_changesOnsetAndTailOnly(double onset, double tail) {
    double[] gains = gains(onset, tail, 0.5);
    assertThat(gains[480]).as("10 ms in").isCloseTo(onset, within(1e-9));
    // Ten time constants in; a 1 kHz tone leaves a ripple of under 0.1 dB in a 5 ms RMS.
    assertThat(gains[28000]).as("steady").isCloseTo(0, within(0.1));
    // 400 dB/s for 0.2 s leads its 50 ms course by 20 dB, more than the 12 dB of the whole gain.
    assertThat(gains[38400]).as("dying away").isCloseTo(tail, within(1e-9));
  }

  @Test
  void shaper_otherLevel_hasTheSameGainOnceAboveTheFloor() {
    double[] loud = gains(6, -4, 0.5);
    double[] soft = gains(6, -4, 0.05);
    // The courses begin at the same silence; its trace is gone after 0.5 s.
    for (int i = 24000; i < 38400; i += 10) {
      assertThat(soft[i]).isCloseTo(loud[i], within(1e-3));
    }
  }

  @Test
  void shaper_silence_isLeftAlone() {
    TransientShaper shaper = new TransientShaperDesign(6, 6).newProcessor(RATE_HZ);
    assertThat(shaper.gainDb(0)).isZero();
  }

  @Test
  void design_nan_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TransientShaperDesign(Double.NaN, 0))
        .withMessageContaining("the onset gain must be finite");
  }
}
