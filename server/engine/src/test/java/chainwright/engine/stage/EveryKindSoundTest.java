package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.filter.FilterDesign;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.StageKind;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for the sound of every stage of the catalogue, at both ends of each setting. */
class EveryKindSoundTest {

  private static final double[] RATES_HZ = {8_000, 44_100, 48_000, 96_000, 192_000, 384_000};

  /** How long a burst of noise is, and how long the silence after it [frames]. */
  private static final int BURST = 1_500;

  private static final int SILENCE = 3_000;

  /** Where in the burst something stands that is no number. */
  private static final int STRAY = 700;

  /** The kinds that are or hold recursive filters. */
  private static final Set<String> KEEPING =
      Set.of(
          "dc-offset-removal",
          "hum-removal",
          "all-pass",
          "high-pass",
          "low-pass",
          "band-pass",
          "notch",
          "bell",
          "low-shelf",
          "high-shelf",
          "tilt",
          "de-ess",
          "dynamic-bell",
          "dynamic-shelf",
          "treble-limiter");

  /** A conversion has no processor of its own: what it divides does. */
  static Stream<String> words() {
    return Catalogue.load().stages().stream()
        .filter(kind -> kind.family() != Family.STRUCTURE)
        .map(StageKind::word)
        .filter(word -> !word.equals(SampleRateConversion.WORD));
  }

  private static StageKind kind(String word) {
    return Catalogue.load().stage(word).orElseThrow();
  }

  private static Optional<ProcessorDesign> design(StageContext context) {
    return StageModels.processor(new StageAudio(context, Optional.empty(), 0, false));
  }

  private static Processor start(ProcessorDesign design) {
    return design.newProcessor(new Wiring(2, name -> new OtherNoise()));
  }

  /** What a detector hears of another chain. */
  private static final class OtherNoise implements Wiring.KeySignal {
    @Override
    public int channelCount() {
      return 2;
    }

    @Override
    public void read(long startFrame, double[][] into, int count) {
      for (double[] channel : into) {
        for (int i = 0; i < count; i++) {
          channel[i] = 0.3 * Math.sin(0.1 * (startFrame + i));
        }
      }
    }
  }

  private static double[][] burst(int frames) {
    SplittableRandom random = new SplittableRandom(7);
    double[][] signal = new double[2][frames];
    for (double[] channel : signal) {
      for (int i = 0; i < BURST; i++) {
        channel[i] = random.nextDouble() - 0.5;
      }
    }
    return signal;
  }

  private static double peak(String name, double[][] signal, int from, int to) {
    double peak = 0;
    for (double[] channel : signal) {
      for (int i = from; i < to; i++) {
        assertThat(channel[i]).as("%s, frame %s", name, i).isFinite();
        peak = Math.max(peak, Math.abs(channel[i]));
      }
    }
    return peak;
  }

  @ParameterizedTest
  @MethodSource("words")
  void sound_atEachEndOfEachSettingAndRate_staysWithinBounds(String word) {
    for (double rateHz : RATES_HZ) {
      for (StageContext context : KindSettings.atTheirEnds(kind(word), rateHz)) {
        Optional<ProcessorDesign> design = design(context);
        assertThat(design.isPresent())
            .as(KindSettings.name(context))
            .isEqualTo(StageModels.design(context).isPresent());
        if (design.isPresent()) {
          checkBounds(KindSettings.name(context), design.get());
        }
      }
    }
  }

  private static void checkBounds(String name, ProcessorDesign design) {
    if (design instanceof FilterDesign filter) {
      assertThat(filter.cascade().isStable()).as(name).isTrue();
    }
    int frames = design.latencyFrames() + BURST + SILENCE;
    double[][] signal = burst(frames);
    start(design).process(signal, 0, frames);
    double whole = peak(name, signal, 0, frames - SILENCE / 3);
    double end = peak(name, signal, frames - SILENCE / 3, frames);
    assertThat(whole).as(name).isLessThan(1e6);
    // What is late by its settings may only begin there.
    assertThat(end).as(name).isLessThanOrEqualTo(2 * Math.max(whole, 0.5));
  }

  @ParameterizedTest
  @MethodSource("words")
  void reset_afterUse_isAsNew(String word) {
    for (StageContext context : KindSettings.atTheirEnds(kind(word), 48_000)) {
      Optional<ProcessorDesign> design = design(context);
      if (design.isEmpty()) {
        continue;
      }
      int frames = design.get().latencyFrames() + BURST + SILENCE;
      Processor processor = start(design.get());
      double[][] first = burst(frames);
      processor.process(first, 0, frames);
      processor.reset();
      double[][] again = burst(frames);
      processor.process(again, 0, frames);
      assertThat(Arrays.deepEquals(again, first)).as(KindSettings.name(context)).isTrue();
    }
  }

  /**
   * What {@link ProcessorDesign} says of samples that are no numbers, of which a render feeds none:
   * a NaN comes out as NaN in its place and leaves nothing behind, an infinity so or as a number;
   * recursive filters keep either until they are reset.
   */
  @ParameterizedTest
  @MethodSource("words")
  void sample_thatIsNoNumber_comesOutInItsPlaceAlone(String word) {
    StageContext context = KindSettings.context(kind(word), 48_000, List.of());
    ProcessorDesign design = design(context).orElseThrow();
    int frames = design.latencyFrames() + BURST + SILENCE;
    for (double stray :
        new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
      double[][] signal = burst(frames);
      signal[0][STRAY] = stray;
      Processor processor = start(design);
      processor.process(signal, 0, frames);
      String name = word + " after " + stray;
      int place = STRAY + design.latencyFrames();
      assertThat(strays(signal[0], 0, place)).as(name).isZero();
      // A width is made of both channels.
      assertThat(strays(signal[1], 0, frames))
          .as(name)
          .isLessThanOrEqualTo(word.equals("width") ? 1 : 0);
      boolean isLate = word.equals("delay");
      if (KEEPING.contains(word)) {
        assertThat(strays(signal[0], place, frames)).as(name).isEqualTo(frames - place);
      } else {
        assertThat(strays(signal[0], place + 1, frames)).as(name).isZero();
        assertThat(Double.isNaN(signal[0][place]))
            .as(name)
            .isEqualTo(Double.isNaN(stray) && !isLate);
      }
      processor.reset();
      double[][] again = burst(frames);
      processor.process(again, 0, frames);
      double[][] wanted = burst(frames);
      start(design).process(wanted, 0, frames);
      assertThat(Arrays.deepEquals(again, wanted)).as(name).isTrue();
    }
  }

  private static int strays(double[] samples, int from, int to) {
    return (int)
        Arrays.stream(samples, from, to).filter(sample -> !Double.isFinite(sample)).count();
  }

  @ParameterizedTest
  @MethodSource("words")
  void input_constantDenormalEmptyOrOneSample_givesNumbers(String word) {
    StageContext context = KindSettings.context(kind(word), 48_000, List.of());
    ProcessorDesign design = design(context).orElseThrow();
    for (double value : new double[] {1, -1, Double.MIN_VALUE, 1e-310, -0.0}) {
      double[][] signal = new double[2][design.latencyFrames() + SILENCE];
      for (double[] channel : signal) {
        Arrays.fill(channel, value);
      }
      start(design).process(signal, 0, signal[0].length);
      assertThat(peak(word, signal, 0, signal[0].length))
          .as("%s of %s", word, value)
          .isLessThan(100);
    }
    Processor processor = start(design);
    processor.process(new double[2][0], 0, 0);
    double[][] one = {{0.5}, {-0.5}};
    processor.process(one, 0, 1);
    assertThat(peak(word, one, 0, 1)).as(word).isLessThan(100);
  }
}
