package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The way through analogue equipment, at an alignment of 0 dBu = −18 dBFS. */
class InsertSoundTest {

  private static final int FRAMES = 24_000;

  private static ProcessorDesign insert(String settings) {
    return Rendered.design(
        WrittenChain.path(
            "session \"s\" {\nalignment 0 dBu = -18 dBFS\n}\nchain c {\ninsert \"box\" "
                + settings
                + " {\ngain 0 dB\n}\n}\n"));
  }

  private static double[] sine(double levelDbfs) {
    double[] channel = new double[FRAMES];
    Arrays.setAll(
        channel,
        i -> Math.pow(10, levelDbfs / 20) * Math.sin(2 * Math.PI * (i * 997 % 48_000) / 48_000));
    return channel;
  }

  private static double[] run(ProcessorDesign design, double[] in) {
    double[][] signal = {in.clone()};
    design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, in.length);
    return signal[0];
  }

  private static double peakDbfs(double[] channel) {
    return 20 * Math.log10(Arrays.stream(channel).map(Math::abs).max().orElseThrow());
  }

  /** The level leaves at the send and is read against the return; nothing else is touched. */
  @ParameterizedTest
  @CsvSource({"0, 0, -6", "4, 4, -6", "4, 0, -6", "-10, 4, -1", "4, 10, -3.05"})
  void sound_belowTheClipLevel_isChangedInLevelAlone(
      double sendDbu, double returnDbu, double levelDbfs) {
    ProcessorDesign design =
        insert("send " + sendDbu + " dBu return " + returnDbu + " dBu latency 2 ms");
    double[] in = sine(levelDbfs);
    double[] out = run(design, in);
    double factor = Math.pow(10, (sendDbu - returnDbu) / 20);
    int late = design.latencyFrames();
    for (int i = late; i < FRAMES; i++) {
      assertThat(out[i]).isCloseTo(factor * in[i - late], within(1e-15));
    }
  }

  /**
   * +20 dBu are 16 dB over the alignment level at a send of +4 dBu, −2 dBFS, which come back 6 dB
   * lower. A tip at the clip level is rounded by a quarter of a decibel, twice, and the clip that
   * is taken to the band may swing over.
   */
  @Test
  void sound_aboveTheClipLevel_comesBackAtTheClipLevel() {
    double[] out = run(insert("send 4 dBu return 10 dBu clip-level 20 dBu"), sine(0));
    assertThat(peakDbfs(out)).isBetween(-8.5, -7.0);
  }

  @Test
  void sound_aboveFullScale_isCutByTheConverters() {
    ProcessorDesign design = insert("send 0 dBu return -20 dBu clip-level 32 dBu");
    assertThat(peakDbfs(run(design, sine(-10)))).isCloseTo(0, within(1e-12));
    assertThat(peakDbfs(run(insert("clip-level 32 dBu"), sine(12)))).isCloseTo(0, within(1e-12));
  }

  /** RMS against that of a full-scale sine: AES17-2020, 3.12; second-hand. */
  @Test
  void noise_withoutASignal_hasItsLevel() {
    double[] out = run(insert("noise -80 dBFS"), new double[FRAMES]);
    double power = Arrays.stream(out).map(x -> x * x).sum() / FRAMES;
    assertThat(10 * Math.log10(2 * power)).isCloseTo(-80, within(0.1));
    assertThat(run(insert("noise -80 dBFS"), new double[FRAMES])).isEqualTo(out);
  }

  /** Noises that have nothing in common add up by their powers: by 10 lg 2 = 3.01 dB. */
  @Test
  void noise_ofTwoInserts_addsUpByPowers() {
    String box = " {\ninsert \"box\" noise -80 dBFS {\ngain 0 dB\n}\n}\n";
    ProcessorDesign both =
        Rendered.design(
            WrittenChain.pathOf("parallel {\npath \"one\"" + box + "path \"other\"" + box + "}"));
    double power = Arrays.stream(run(both, new double[FRAMES])).map(x -> x * x).sum() / FRAMES;
    assertThat(10 * Math.log10(2 * power)).isCloseTo(-76.99, within(0.1));
  }
}
