package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sounds between left and right. */
class PanDesignTest {

  private static final double ROUNDING = 1e-12;

  private static final double HALF_POWER_DB = -10 * Math.log10(2);

  @ParameterizedTest
  @ValueSource(doubles = {-6.0206, -4.5, -3.0103, -2, 0})
  void pan_atTheCentreAndTheEnds_hasTheLawAndOneSide(double lawDb) {
    PanDesign centre = new PanDesign(0, lawDb, true);
    assertThat(20 * Math.log10(centre.leftFactor())).isCloseTo(lawDb, within(1e-9));
    assertThat(centre.rightFactor()).isCloseTo(centre.leftFactor(), within(ROUNDING));
    PanDesign right = new PanDesign(1, lawDb, true);
    assertThat(right.rightFactor()).isCloseTo(1, within(ROUNDING));
    assertThat(right.leftFactor()).isCloseTo(0, within(ROUNDING));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, -0.6, -0.1, 0, 0.35, 0.9})
  void pan_lawOfHalfPower_keepsThePower(double position) {
    PanDesign pan = new PanDesign(position, HALF_POWER_DB, true);
    assertThat(Math.pow(pan.leftFactor(), 2) + Math.pow(pan.rightFactor(), 2))
        .isCloseTo(1, within(ROUNDING));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, -0.6, -0.1, 0, 0.35, 0.9})
  void pan_lawOfHalfAmplitude_keepsTheSum(double position) {
    PanDesign pan = new PanDesign(position, 2 * HALF_POWER_DB, true);
    assertThat(pan.leftFactor() + pan.rightFactor()).isCloseTo(1, within(ROUNDING));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-6, -4.5, -3, -1.5, 0})
  void pan_fromLeftToRight_neverTurnsBack(double lawDb) {
    double left = 2;
    for (int i = -100; i <= 100; i++) {
      double next = new PanDesign(i / 100.0, lawDb, true).leftFactor();
      assertThat(next).isLessThanOrEqualTo(left + ROUNDING);
      left = next;
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-6, -3, 0})
  void pan_ofTwoChannels_turnsDownTheFarOneAlone(double lawDb) {
    PanDesign centre = new PanDesign(0, lawDb, false);
    assertThat(centre.leftFactor()).isEqualTo(1);
    assertThat(centre.rightFactor()).isEqualTo(1);
    PanDesign right = new PanDesign(0.5, lawDb, false);
    assertThat(right.rightFactor()).isEqualTo(1);
    assertThat(right.leftFactor()).isLessThan(1);
  }
}
