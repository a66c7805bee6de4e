package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for everything that processes audio. */
class SoundLawsTest {

  private static final int FRAMES = 9_000;

  static Stream<String> chains() {
    return Stream.of(
        "high-pass 66 Hz 18 dB/oct",
        "bell 3.1 kHz -2.5 dB Q 2.2\nhigh-shelf 12 kHz 2 dB",
        "parallel {\npath \"dry\"\npath \"wet\" -10 dB {\nlow-pass 2 kHz 12 dB/oct\n}\n}",
        "mid-side {\nmid {\nbell 300 Hz -3 dB Q 1\n}\nside {\nhigh-pass 120 Hz 6 dB/oct\n}\n}",
        "multiband 24 dB/oct {\nband below 200 Hz {\ngain -1 dB\n}\nband above 200 Hz {\ngain 2 dB\n}\n}",
        "during 0:00.05 to 0:00.1 {\ngain -6 dB\n}",
        "ride 0:00.05 to 0:00.1 -3 dB",
        "compressor threshold -30 dBFS ratio 4:1 stereo-link 60 % blend 70 %",
        "compressor threshold -30 dBFS ratio 4:1 detector rms",
        "de-ess band 5 to 9 kHz threshold -30 dBFS",
        "de-ess broadband band 5 to 9 kHz threshold -30 dBFS",
        "gate threshold -20 dBFS",
        "expander threshold -20 dBFS",
        "limiter ceiling -6 dBFS",
        "limiter ceiling -6 dBFS stereo-link 50 %",
        "dynamic-bell 3 kHz threshold -30 dBFS",
        "dynamic-shelf high 8 kHz threshold -40 dBFS",
        "dynamic-bell 3 kHz threshold -30 dBFS max-boost 6 dB",
        "insert \"box\" send 4 dBu return 0 dBu latency 1.6 ms {\nbell 100 Hz 2 dB Q 1\n}",
        "treble-limiter 7 kHz threshold -30 dBFS",
        "delay 1 ms",
        "delay 1.2345 ms",
        "align -2.01 ms",
        "pan -30 %",
        "width side-gain -3 dB mono-below 120 Hz",
        "transient-shaper onset 4 dB tail -3 dB",
        "saturation symmetric",
        "saturation asymmetric oversampling 1",
        "saturation tape oversampling 2 blend 40 %",
        "saturation transformer oversampling 32",
        "saturation valve oversampling 16",
        "saturation tape thd-at-alignment 0 % blend 40 %",
        "true-peak-limiter ceiling -6 dBTP",
        "true-peak-limiter ceiling -6 dBTP look-ahead 0 ms oversampling 32",
        "clipper ceiling -6 dBFS",
        "clipper ceiling -6 dBFS knee 0 dB oversampling 4",
        "noise-reduction 6 dB",
        "hum-removal 50 Hz harmonics 8 depth -24 dB",
        "dc-offset-removal 4 Hz",
        "click-repair",
        "click-repair 0.05 ms",
        "plosive-repair",
        "plosive-repair 24 dB max-length 20 ms below 300 Hz",
        "reverb",
        "reverb 0.05 s bass-ratio 0.5 treble-ratio 0.2 pre-delay 0 ms blend 30 %",
        "reverb 4 s bass-ratio 2 treble-ratio 1.2 pre-delay 1.7 ms",
        "echo 23 ms",
        "echo 0.1 ms feedback 99 % damping 3 kHz blend 40 %");
  }

  @ParameterizedTest
  @MethodSource("chains")
  void blocks_ofAnySize_changeNoBit(String lines) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(lines));
    double[][] signal = Rendered.noise(2, FRAMES, 1);
    double[][] whole = Rendered.inBlocks(start(design), signal, List.of(FRAMES));
    assertThat(Rendered.inBlocks(start(design), signal, List.of(1, 7, 511, 513, 64)))
        .isDeepEqualTo(whole);
    assertThat(Arrays.deepEquals(whole, signal)).as(lines).isFalse();
  }

  @ParameterizedTest
  @MethodSource("chains")
  void reset_afterUse_isAsNew(String lines) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(lines));
    double[][] signal = Rendered.noise(2, FRAMES, 2);
    Processor processor = start(design);
    double[][] first = Rendered.inBlocks(processor, signal, List.of(FRAMES));
    processor.reset();
    assertThat(Rendered.inBlocks(processor, signal, List.of(FRAMES))).isDeepEqualTo(first);
  }

  @ParameterizedTest
  @MethodSource("chains")
  void silence_ofAnyLength_staysSilence(String lines) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(lines));
    assertThat(Rendered.inBlocks(start(design), new double[2][FRAMES], List.of(1000)))
        .isDeepEqualTo(new double[2][FRAMES]);
  }

  /** Garbage made while sound is processed would be collected while it is processed. */
  @ParameterizedTest
  @MethodSource("chains")
  void process_onceWarm_allocatesNothing(String lines) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    Processor processor = start(Rendered.design(WrittenChain.pathOf(lines)));
    double[][] signal = Rendered.noise(2, FRAMES, 3);
    long least = Long.MAX_VALUE;
    // The first passes may load classes and be compiled.
    for (int pass = 0; pass < 10; pass++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      for (int from = 0; from < FRAMES; from += 1000) {
        processor.process(signal, from, from + 1000);
      }
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    assertThat(least).as("bytes").isZero();
  }

  private static Processor start(ProcessorDesign design) {
    return design.newProcessor(Wiring.ofChannels(2));
  }
}
