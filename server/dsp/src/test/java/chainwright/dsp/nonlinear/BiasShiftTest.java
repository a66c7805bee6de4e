package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;

/** How the bias of a valve gives way and recovers, as its settings say; no source but our own. */
class BiasShiftTest {

  private static final int RATE_HZ = 192_000;
  private static final double RECOVERY_SECONDS = 0.04;
  private static final double DRIVE_DB = 6;

  /** 12 dB above alignment with the drive: −18 + 12 − 6 dBFS. */
  private static final double LIMIT_DBFS = -12;

  private static SaturationModel valve(double recoverySeconds) {
    return new ValveSaturation(DRIVE_DB, 0.01, 0.3, recoverySeconds).design();
  }

  private static double[] tone(double levelDbfs, int frames) {
    double[] samples = new double[frames];
    for (int i = 0; i < frames; i++) {
      samples[i] = Math.pow(10, levelDbfs / 20) * Math.sin(2 * Math.PI * 1000 * i / RATE_HZ);
    }
    return samples;
  }

  private static double[] through(SaturationModel model, double[] samples) {
    double[] sound = samples.clone();
    model.newProcessor(RATE_HZ, 1).process(new double[][] {sound}, 0, sound.length);
    return sound;
  }

  /** The amplitude of a multiple of 1 kHz in whole periods. */
  private static double amplitude(double[] samples, int from, int periods, int multiple) {
    int count = periods * RATE_HZ / 1000;
    double re = 0;
    double im = 0;
    for (int i = 0; i < count; i++) {
      double angle = 2 * Math.PI * 1000 * multiple * i / RATE_HZ;
      re += samples[from + i] * Math.cos(angle);
      im += samples[from + i] * Math.sin(angle);
    }
    return 2 * Math.hypot(re, im) / count;
  }

  /** The mean of what a full-scale sine has over the limit, before the curve, by quadrature. */
  private static double shiftOfFullScale(SaturationModel model) {
    double sum = 0;
    for (int i = 0; i < 10_000; i++) {
      double sample = Math.sin(2 * Math.PI * (i + 0.5) / 10_000);
      sum += Math.max(0, sample - Math.pow(10, LIMIT_DBFS / 20)) / 10_000;
    }
    return sum * Math.pow(10, model.shaper().driveDb() / 20);
  }

  @Test
  void tone_upToTheLimit_meetsTheBiasAsItIs() {
    double[] tone = tone(LIMIT_DBFS - 0.1, RATE_HZ / 4);
    // Both have the same coupling, since the asymmetry is not 0.
    assertThat(through(valve(RECOVERY_SECONDS), tone)).isEqualTo(through(valve(0), tone));
    assertThat(valve(RECOVERY_SECONDS).thdShare(1000, LIMIT_DBFS - 0.1))
        .isEqualTo(valve(0).thdShare(1000, LIMIT_DBFS - 0.1));
  }

  /** The bias recovers a little in each period of 1 ms, a 40th of its time. */
  @Test
  void settledTone_overTheLimit_distortsAsTheModelSays() {
    double[] sound = through(valve(RECOVERY_SECONDS), tone(0, 2 * RATE_HZ));
    Harmonics wanted = valve(RECOVERY_SECONDS).harmonics(1000, 0, 3);
    Harmonics fixed = valve(0).harmonics(1000, 0, 3);
    for (int n = 1; n <= 3; n++) {
      double measured = amplitude(sound, sound.length - 19_200, 100, n);
      assertThat(measured).as("harmonic %s", n).isCloseTo(wanted.amplitude(n), withPercentage(3));
    }
    assertThat(wanted.amplitude(2) / fixed.amplitude(2)).isNotCloseTo(1, within(0.3));
  }

  /** What a quiet tone gains is the slope of the curve where the bias is at that time. */
  @Test
  void quietTone_afterAnOverload_getsItsGainBackInTheTimeWritten() {
    int loud = RATE_HZ / 10;
    double[] overload = new double[RATE_HZ / 2];
    System.arraycopy(tone(0, loud), 0, overload, 0, loud);
    double[] both = overload.clone();
    double[] quiet = tone(-80, overload.length);
    for (int i = loud; i < both.length; i++) {
      both[i] += quiet[i];
    }
    SaturationModel model = valve(RECOVERY_SECONDS);
    double[] after = through(model, both);
    double[] alone = through(model, overload);
    for (int i = 0; i < after.length; i++) {
      after[i] -= alone[i];
    }
    double shift = shiftOfFullScale(model) * (1 - Math.exp(-0.1 / RECOVERY_SECONDS));
    for (double seconds : new double[] {0.005, 0.02, RECOVERY_SECONDS, 0.1, 0.3}) {
      double left = shift * Math.exp(-(seconds + 0.0005) / RECOVERY_SECONDS);
      double slope = model.shaper().base().slope(-left);
      double measured = amplitude(after, loud + (int) (seconds * RATE_HZ), 1, 1) / 1e-4;
      assertThat(measured).as("%s s later", seconds).isCloseTo(slope, withPercentage(0.5));
    }
  }
}
