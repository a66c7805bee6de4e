package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.TwoStageBallistics;
import chainwright.engine.WrittenChain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The static curves, detection bands, times and latencies of stages written as text. */
class StageCurveTest {

  /** A static curve is exact to rounding; the table has four decimals. */
  private static final double CURVE_DB = 0.0001;

  /** The filters follow the analogue ones that closely at these frequencies. */
  private static final double BAND_DB = 0.05;

  /**
   * Source: Giannoulis, Massberg and Reiss 2012, eq. 4, worked out by hand; in the middle of a knee
   * of W dB the reduction is {@code (1 - 1/R) W / 8}.
   */
  @ParameterizedTest
  @CsvSource({
    "compressor threshold -20 dBFS ratio 4:1 knee 0 dB, -8, -17",
    "compressor threshold -20 dBFS ratio 4:1, -20, -20.5625",
    "compressor threshold -20 dBFS ratio 4:1 make-up 3 dB, -40, -37",
    "compressor threshold -20 dBFS knee 0 dB, -8, -16",
    "limiter ceiling -1 dBFS, 0, -1",
    "limiter ceiling -1 dBFS, -3, -3",
    "true-peak-limiter ceiling -1 dBTP, 2, -1",
    "clipper ceiling -1 dBFS knee 0 dB, 5, -1",
    "clipper ceiling -1 dBFS knee 2 dB, -3, -3",
    "clipper ceiling -1 dBFS knee 2 dB, -1, -1.5",
    "de-ess band 5 to 9 kHz threshold -30 dBFS max-reduction 6 dB, -26, -29",
    "de-ess band 5 to 9 kHz threshold -30 dBFS max-reduction 6 dB, 0, -6",
    "treble-limiter threshold -20 dBFS, -18, -20",
    "treble-limiter threshold -20 dBFS, -10, -13",
    "dynamic-bell 300 Hz threshold -30 dBFS, -27, -29",
    "dynamic-bell 300 Hz threshold -30 dBFS, -10, -14",
    "dynamic-shelf high 8 kHz threshold -30 dBFS max-cut 2 dB, -10, -12",
    "ducker key voice threshold -40 dBFS reduction 6 dB, -20, -26",
    "ducker key voice threshold -40 dBFS reduction 6 dB, -50, -50",
  })
  void stageOnLoudSound_curve_turnsItDown(String line, double inputDb, double outputDb) {
    check(line, inputDb, outputDb);
  }

  /** Source: the same knee mirrored about the threshold; a gate is its range down when closed. */
  @ParameterizedTest
  @CsvSource({
    "gate threshold -40 dBFS, -30, -30",
    "gate threshold -40 dBFS, -50, -62",
    "gate threshold -40 dBFS range 60 dB, -50, -110",
    "expander threshold -40 dBFS ratio 2:1 knee 0 dB range 20 dB, -50, -60",
    "expander threshold -40 dBFS ratio 2:1 knee 0 dB range 20 dB, -80, -100",
    "expander threshold -40 dBFS ratio 2:1 range 20 dB, -40, -40.75",
  })
  void stageOnSoftSound_curve_turnsItDown(String line, double inputDb, double outputDb) {
    check(line, inputDb, outputDb);
  }

  /**
   * Source: Linkwitz-Riley half voltage and Butterworth half power at the cutoff, 0 dB at the
   * centre of a band-pass; the side chain's Butterworth filter of 12 dB/oct.
   */
  @ParameterizedTest
  @CsvSource({
    "de-ess band 4 to 16 kHz threshold -30 dBFS slope 48 dB/oct, 4000, -6.02",
    "de-ess band 4 to 16 kHz threshold -30 dBFS slope 48 dB/oct, 16000, -6.02",
    "de-ess band 4 to 16 kHz threshold -30 dBFS slope 48 dB/oct, 8000, -0.03",
    "treble-limiter 7 kHz threshold -20 dBFS, 7000, -3.01",
    "dynamic-bell 300 Hz threshold -30 dBFS, 300, 0",
    "dynamic-shelf low 200 Hz threshold -30 dBFS, 200, -3.01",
    "dynamic-shelf high 200 Hz threshold -30 dBFS, 200, -3.01",
    "compressor threshold -20 dBFS { side-chain { high-pass 120 Hz } }, 120, -3.01",
    "dynamic-bell 300 Hz threshold -30 dBFS { side-chain { gain -2 dB } }, 300, -2",
  })
  void detector_hearsItsBand(String line, double hertz, double expectedDb) {
    assertThat(WrittenChain.soundOf(line).detection().orElseThrow().decibelsAt(hertz))
        .as(line)
        .isCloseTo(expectedDb, within(BAND_DB));
  }

  @Test
  void detector_ofACompressorAlone_hearsEverything() {
    assertThat(WrittenChain.soundOf("compressor threshold -20 dBFS").detection()).isEmpty();
  }

  @Test
  void compressor_writtenTimes_areItsBallistics() {
    assertThat(compressor("compressor threshold -20 dBFS attack 12 ms release 90 ms"))
        .satisfies(
            design -> {
              assertThat(design.detector()).isEqualTo(new Detector.Peak());
              assertThat(design.ballistics())
                  .isInstanceOfSatisfying(
                      SmoothedBallistics.class,
                      times -> {
                        assertThat(times.attackSeconds()).isEqualTo(0.012);
                        assertThat(times.releaseSeconds()).isEqualTo(0.09);
                      });
            });
  }

  @Test
  void compressor_ofRms_averagesOverItsWindow() {
    assertThat(compressor("compressor detector rms threshold -20 dBFS rms-window 30 ms").detector())
        .isEqualTo(new Detector.Rms(0.03));
  }

  @Test
  void compressor_ofProgramme_releasesInTwoStages() {
    assertThat(
            compressor(
                    "compressor detector programme threshold -20 dBFS fast 50 ms slow 900 ms split 40 %")
                .ballistics())
        .isEqualTo(new TwoStageBallistics(0.01, 0.05, 0.9, 0.4));
  }

  @Test
  void gate_writtenTimes_areItsDesign() {
    assertThat(
            WrittenChain.soundOf("gate threshold -40 dBFS attack 2 ms hold 80 ms release 200 ms")
                .gate()
                .orElseThrow())
        .satisfies(
            gate -> {
              assertThat(gate.attackSeconds()).isEqualTo(0.002);
              assertThat(gate.holdSeconds()).isEqualTo(0.08);
              assertThat(gate.releaseSeconds()).isEqualTo(0.2);
              assertThat(gate.curve().hysteresisDb()).isEqualTo(4);
            });
  }

  private static CompressorDesign compressor(String line) {
    return WrittenChain.soundOf(line).compressor().orElseThrow();
  }

  private static void check(String line, double inputDb, double outputDb) {
    assertThat(WrittenChain.soundOf(line).curve().orElseThrow().outputDb(inputDb))
        .as("%s at %s dB", line, inputDb)
        .isCloseTo(outputDb, within(CURVE_DB));
  }
}
