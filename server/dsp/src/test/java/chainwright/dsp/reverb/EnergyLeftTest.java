package chainwright.dsp.reverb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The energy that is to come of a room and of an echo, beside the impulse response that sounds. */
class EnergyLeftTest {

  private static final SampleRate RATE = SampleRate.ofHertz(48_000);
  private static final EnergyBand MIDDLE = EnergyBand.ofOctaves(500, 1000);
  private static final List<EnergyBand> BANDS =
      List.of(EnergyBand.ofOctaves(125, 125), MIDDLE, EnergyBand.ofOctaves(4000, 4000));

  private static double db(double energy) {
    return 10 * Math.log10(energy);
  }

  /** The energy of a click in a band. */
  private static double ofClick(EnergyBand band) {
    return (band.highHz() - band.lowHz()) / (RATE.hertz() / 2);
  }

  /** The squares integrated backwards, summed over responses. Source: ISO 3382-1; from memory. */
  private static double[] measured(List<double[]> responses, EnergyBand band) {
    double[] left = new double[responses.get(0).length];
    for (double[] response : responses) {
      double[] inBand = RoomMeasures.band(response, band.lowHz(), band.highHz(), RATE);
      double sum = 0;
      for (int i = inBand.length - 1; i >= 0; i--) {
        sum += inBand[i] * inBand[i];
        left[i] += sum;
      }
    }
    return left;
  }

  /**
   * Down to −60 dB, over both inputs and channels. In the lowest octave few resonances make a room,
   * which so differs from the mean; where the treble falls three times as fast as the middle, an
   * octave and a sharp filter are not quite the same.
   */
  @ParameterizedTest
  @CsvSource({
    "1.4, 1.1, 0.7, 20, 2, 0.8",
    "0.4, 1, 1, 0, 2.8, 0.9",
    "2.8, 1.5, 0.3, 100, 1, 2.3",
    "1.4, 0.5, 1.2, 250, 1.7, 0.8",
    "6, 1, 0.8, 0, 0.8, 0.8"
  })
  void energyLeft_ofARoom_isThatOfItsImpulseResponse(
      double seconds,
      double bassRatio,
      double trebleRatio,
      double preDelayMs,
      double lowDb,
      double otherDb) {
    ReverbDesign design =
        new ReverbDesign(
            new DecayTimes(seconds, bassRatio, trebleRatio), (int) (preDelayMs * 48), RATE.hertz());
    List<double[]> responses = new ArrayList<>();
    for (int c = 0; c < 2; c++) {
      responses.addAll(List.of(RoomMeasures.impulseResponse(design, 2, c)));
    }
    double step = design.times().longestSeconds() / 200;
    double[][] left = design.energyLeft(BANDS, step, 240);
    for (int b = 0; b < BANDS.size(); b++) {
      double[] measured = measured(responses, BANDS.get(b));
      double toleranceDb = b == 0 ? lowDb : otherDb;
      assertThat(db(measured[0] / 2 / ofClick(BANDS.get(b))))
          .as("%s in all", BANDS.get(b))
          .isCloseTo(db(left[b][0]), within(b == 0 ? 1 : 0.4));
      for (int i = 0; i < 240 && left[b][i] > 1e-6 * left[b][0]; i++) {
        int frame = (int) Math.round(i * step * RATE.hertz());
        assertThat(db(measured[frame] / measured[0]))
            .as("%s after %s s", BANDS.get(b), i * step)
            .isCloseTo(db(left[b][i] / left[b][0]), within(toleranceDb));
      }
    }
  }

  /** Source: ISO 3382-1, T30: the line from −5 to −35 dB; from memory. */
  @ParameterizedTest
  @CsvSource({
    "0.05, 48000",
    "0.4, 8000",
    "1.4, 44100",
    "1.4, 48000",
    "2.8, 96000",
    "30, 48000",
    "30, 384000"
  })
  void energyLeft_inTheMiddle_fallsInTheDecayThatIsSet(double seconds, double rateHz) {
    ReverbDesign design = new ReverbDesign(new DecayTimes(seconds, 1.1, 0.7), 0, rateHz);
    double step = seconds / 300;
    double[] left = design.energyLeft(List.of(MIDDLE), step, 400)[0];
    int from = 0;
    while (db(left[from] / left[0]) > -5) {
      from++;
    }
    int to = from;
    while (db(left[to] / left[0]) > -35) {
      to++;
    }
    double fallDb = db(left[from] / left[to]);
    assertThat((to - from) * step * 60 / fallDb).isCloseTo(seconds, within(0.05 * seconds));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 30, 77, 1000})
  void energyLeft_atAnyNumberOfSteps_isAlike(int count) {
    ReverbDesign design = new ReverbDesign(new DecayTimes(1.4, 1.1, 0.7), 960, RATE.hertz());
    double[] some = design.energyLeft(List.of(MIDDLE), 1.0 / (count - 1), count)[0];
    double[] fine = design.energyLeft(List.of(MIDDLE), 1.0 / 1000, 1001)[0];
    assertThat(some[0]).isCloseTo(fine[0], within(1e-9));
    assertThat(db(some[count - 1])).isCloseTo(db(fine[1000]), within(0.3));
  }

  @Test
  void energyLeft_duringThePreDelay_isAllOfIt() {
    ReverbDesign design = new ReverbDesign(new DecayTimes(1.4, 1, 1), 4_800, RATE.hertz());
    double[] left = design.energyLeft(List.of(MIDDLE), 0.01, 100)[0];
    assertThat(left[0]).isCloseTo(1, within(0.05));
    assertThat(left[9]).isEqualTo(left[0]);
    assertThat(left[13]).isLessThan(left[0]);
    assertThat(left).isSortedAccordingTo((one, other) -> Double.compare(other, one));
  }

  /**
   * In a window at each repeat. Where the damping has left most at the lower end of the octave, the
   * filters let a little in from below.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0", "0.7, 3000", "0.3, 800"})
  void repeats_ofAnEcho_haveTheEnergyOfItsImpulseResponse(double feedback, double dampingHz) {
    int delay = 19_200;
    EchoDesign design =
        new EchoDesign(
            delay,
            feedback,
            dampingHz == 0 ? Optional.empty() : Optional.of(Frequency.ofHertz(dampingHz)),
            RATE);
    double[] response = RoomMeasures.impulseResponse(design, 1, 0)[0];
    double[][] repeats = design.repeatEnergies(BANDS, 1e-4);
    for (int b = 0; b < BANDS.size(); b++) {
      double[] inBand =
          RoomMeasures.band(response, BANDS.get(b).lowHz(), BANDS.get(b).highHz(), RATE);
      for (int n = 0; n < repeats.length && repeats[n][b] > 1e-4; n++) {
        int from = (n + 1) * delay - 100;
        double energy =
            RoomMeasures.energy(inBand, from, Math.min(from + delay, inBand.length))
                / ofClick(BANDS.get(b));
        assertThat(db(energy))
            .as("repeat %d, %s", n + 1, BANDS.get(b))
            .isCloseTo(db(repeats[n][b]), within(0.8));
      }
    }
  }

  /** Source: each is softer by the feedback: n with 20 log10 0.5 (n − 1) ≥ −60 dB. */
  @ParameterizedTest
  @CsvSource({"0.5, 10", "0, 1", "0.99, 688"})
  void repeats_downToAnEnergy_areThoseThatHaveIt(double feedback, int expected) {
    EchoDesign design = new EchoDesign(4_800, feedback, Optional.empty(), RATE);
    double[][] repeats = design.repeatEnergies(BANDS, 1e-6);
    assertThat(repeats).hasDimensions(expected, 3);
    assertThat(Arrays.stream(repeats[0]).toArray())
        .containsExactly(new double[] {1, 1, 1}, within(1e-12));
  }
}
