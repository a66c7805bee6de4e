package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every linear stage beside an independent calculation.
 *
 * <p>Source: reference tables computed with numpy and scipy, see ORIGIN.md in the resources.
 * Tolerances are those that the tables' index suggests.
 */
class ReferenceResponseTest {

  private static final double MAGNITUDE_DB = 1e-6;
  private static final double PHASE_RADIANS = 1e-6;
  private static final double GROUP_DELAY_RELATIVE = 1e-6;

  /** Below this, the tables themselves are rounding. */
  private static final double LOWEST_COMPARED_DB = -120;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "p01_butter_hp1_80_48000",
        "p02_butter_hp2_80_44100",
        "p03_butter_hp3_100_48000",
        "p04_butter_hp4_120_48000",
        "p05_butter_hp8_40_96000",
        "p06_butter_lp1_10000_48000",
        "p07_butter_lp2_8000_48000",
        "p08_butter_lp4_16000_44100",
        "p09_butter_lp6_12000_96000",
        "p10_lr_lp2_2000_48000",
        "p11_lr_lp4_1000_48000",
        "p12_lr_hp4_1000_48000",
        "p13_lr_hp8_200_44100",
        "p14_bessel_lp2_mag_5000_48000",
        "p15_bessel_lp4_phase_5000_48000",
        "p16_bessel_hp4_mag_100_48000",
        "p17_rbj_bell_1000_48000",
        "p18_rbj_bell_250_44100",
        "p19_rbj_bell_3000_48000",
        "p20_rbj_bell_12000_48000",
        "p21_rbj_bell_60_192000",
        "p22_rbj_lowshelf_120_48000",
        "p23_rbj_lowshelf_200_44100",
        "p24_rbj_highshelf_8000_48000",
        "p25_rbj_highshelf_10000_96000",
        "p26_rbj_notch_50_48000",
        "p27_rbj_notch_1000_44100",
        "p28_rbj_apf_1000_48000",
        "p29_rbj_bpf0_6500_48000",
        "p30_rbj_lpf_3000_48000",
        "p31_tilt1_1000_48000",
        "p32_tilt1_700_44100"
      })
  void response_ofReferenceCase_equalsTheTable(String file) {
    List<ReferenceTable.Row> table = ReferenceCases.table("responses/" + file + ".csv");
    AnaloguePrototype prototype = ReferenceCases.prototype(file);
    double secondsPerSample = 1 / ReferenceCases.rate(file).hertz();
    check(
        Curve.BILINEAR.design(prototype, ReferenceCases.rate(file)),
        secondsPerSample,
        ReferenceCases.column(table, "f_hz"),
        ReferenceCases.column(table, "mag_db"),
        ReferenceCases.column(table, "phase_rad"),
        ReferenceCases.column(table, "gd_samples"));
    if (!file.startsWith("p19")) { // Its quality factor was made for the bent axis.
      check(
          prototype,
          secondsPerSample,
          ReferenceCases.column(table, "f_hz"),
          ReferenceCases.column(table, "ana_mag_db"),
          ReferenceCases.column(table, "ana_phase_rad"),
          ReferenceCases.column(table, "ana_gd_samples"));
    }
  }

  private static void check(
      Response response,
      double secondsPerSample,
      double[] hertz,
      double[] decibels,
      double[] radians,
      double[] delaySamples) {
    double[] actualDecibels = response.toDecibels(hertz);
    double[] wrapped = response.toWrappedPhase(hertz);
    double[] continuous = response.toPhase(hertz);
    double[] delay = response.toGroupDelay(hertz);
    for (int i = 0; i < hertz.length; i++) {
      if (decibels[i] <= LOWEST_COMPARED_DB) {
        continue;
      }
      assertThat(actualDecibels[i])
          .as("magnitude at %s Hz", hertz[i])
          .isCloseTo(decibels[i], within(MAGNITUDE_DB));
      assertThat(Math.IEEEremainder(wrapped[i] - radians[i], 2 * Math.PI))
          .as("phase at %s Hz", hertz[i])
          .isCloseTo(0, within(PHASE_RADIANS));
      assertThat(Math.IEEEremainder(continuous[i] - radians[i], 2 * Math.PI))
          .as("continuous phase at %s Hz", hertz[i])
          .isCloseTo(0, within(PHASE_RADIANS));
      assertThat(delay[i] / secondsPerSample)
          .as("group delay at %s Hz", hertz[i])
          .isCloseTo(delaySamples[i], within(GROUP_DELAY_RELATIVE * Math.abs(delaySamples[i])));
    }
  }
}
