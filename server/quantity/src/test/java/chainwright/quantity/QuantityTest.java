package chainwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {

  @ParameterizedTest
  @CsvSource({
    "FREQUENCY, 66, 66 Hz",
    "FREQUENCY, 3100, 3.1 kHz",
    "FREQUENCY, 999.5, 999.5 Hz",
    "GAIN, 2, +2 dB",
    "GAIN, -2.5, -2.5 dB",
    "GAIN, 0, 0 dB",
    "DIGITAL_LEVEL, -18, -18 dBFS",
    "ANALOGUE_LEVEL, 4, +4 dBu",
    "TRUE_PEAK_LEVEL, -1, -1 dBTP",
    "LOUDNESS, -16, -16 LUFS",
    "SLOPE, 18, 18 dB/oct",
    "RATIO, 3, 3:1",
    "QUALITY, 2.2, Q 2.2",
    "TIME, 0.012, 12 ms",
    "TIME, 0.00005, 50 us",
    "TIME, 0.0005, 0.5 ms",
    "TIME, 0, 0 ms",
    "TIME, 1.5, 1.5 s",
    "SHARE, 30, 30 %",
    "BANDWIDTH, 1.2, 1.2 oct",
    "WORD_LENGTH, 24, 24 bit",
  })
  void quantity_written_isSpeltAsInTheNotation(Dimension dimension, double value, String expected) {
    assertThat(Quantity.of(dimension, value)).hasToString(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "FREQUENCY, 3000, 14000, 3 to 14 kHz",
    "FREQUENCY, 80, 14000, 80 Hz to 14 kHz",
    "FREQUENCY, 0, 14000, 0 to 14 kHz",
    "GAIN, -6, 4, -6 to +4 dB",
    "GAIN, -6, 0, -6 to 0 dB",
    "TIME, 0.3, 5, 300 ms to 5 s",
    "TIME, -0.02, 0, -20 to 0 ms",
    "RATIO, 1.5, 4, 1.5:1 to 4:1",
    "QUALITY, 0.5, 6, Q 0.5 to 6",
    "SLOPE, 12, 12, 12 dB/oct",
  })
  void range_written_namesItsUnitOnceWhereBothEndsReadInIt(
      Dimension dimension, double low, double high, String expected) {
    assertThat(new QuantityRange(Quantity.of(dimension, low), Quantity.of(dimension, high)))
        .hasToString(expected);
  }

  @Test
  void range_ofTwoDimensions_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new QuantityRange(new Decibels(-6), Frequency.ofHertz(100)))
        .withMessageContaining("GAIN and FREQUENCY");
  }

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void quantity_ofAnyDimension_keepsItsBaseValueAndDimension(Dimension dimension) {
    Quantity quantity = Quantity.of(dimension, 12.5);
    assertThat(quantity.baseValue()).isEqualTo(12.5);
    assertThat(quantity.dimension()).isEqualTo(dimension);
  }

  @ParameterizedTest
  @CsvSource({
    "Hz, HERTZ",
    "khz, KILOHERTZ",
    "k, KILOHERTZ",
    "dB, DECIBEL",
    "DBFS, DBFS",
    "dB/Oct, DB_PER_OCTAVE",
    "ms, MILLISECOND",
    "\u00b5s, MICROSECOND",
    "oct, OCTAVE",
    "%, PERCENT",
    "LUFS, LUFS"
  })
  void unit_spelling_isRecognisedWhateverItsCase(String spelling, Unit expected) {
    assertThat(Unit.parse(spelling)).contains(expected);
  }

  @Test
  void unit_unknownSpelling_isEmpty() {
    assertThat(Unit.parse("furlong")).isEmpty();
  }

  @Test
  void frequency_negative_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Frequency.ofHertz(-1))
        .withMessageContaining("must not be below 0 Hz, but was -1");
  }

  @Test
  void ratio_zero_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Ratio(0))
        .withMessageContaining("above 0");
  }

  @Test
  void sampleRate_nyquist_isHalf() {
    assertThat(SampleRate.ofHertz(44_100).nyquist()).isEqualTo(Frequency.ofHertz(22_050));
  }

  /**
   * The ends of a region n octaves wide lie n/2 octaves either side of its centre, so the factor is
   * 1 / (2^(n/2) - 2^(-n/2)), which is the definition and not the formula in use; 1 oct gives the
   * root of 2. Source of the definition: Audio EQ Cookbook (W3C Group Note).
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.05, 1 / 3.0, 0.5, 1, 1.5, 2, 4})
  void qualityFactor_ofAWidth_isTheCentreDividedByTheDistanceOfTheEnds(double octaves) {
    double expected = 1 / (Math.pow(2, octaves / 2) - Math.pow(2, -octaves / 2));
    QualityFactor quality = QualityFactor.ofBandwidth(new Bandwidth(octaves));
    assertThat(quality.value()).isCloseTo(expected, within(1e-12 * expected));
    assertThat(quality.toBandwidth().octaves()).isCloseTo(octaves, within(1e-12));
  }
}
