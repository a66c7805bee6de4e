package chainwright.engine.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import chainwright.engine.WrittenChain;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.project.Scope;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What paths are built of chains written as text. */
class PathBuilderTest {

  /** Gains of constants add up to rounding. */
  private static final double ROUNDING_DB = 1e-9;

  private static final String PRESETS =
      """
      preset inner {
        gain -1 dB
      }
      preset outer {
        gain -2 dB
        apply inner
      }
      preset ping {
        gain -4 dB
        apply pong
      }
      preset pong {
        gain -8 dB
        apply ping
      }
      preset self {
        gain -16 dB
        apply self
      }
      """;

  /** Each gain of the presets is another power of two, so that the sum says which are in. */
  @ParameterizedTest
  @CsvSource({
    "apply inner, -1",
    "apply outer, -3",
    "apply inner bypassed, 0",
    "apply outer bypassed, 0",
    "apply ping, -12",
    "apply pong, -12",
    "apply self, -16",
    "apply nowhere, 0",
    "gain -1 dB bypassed, 0",
    "during 0:01 to 0:02 { gain -1 dB }, 0",
    "insert \"box\" send 4 dBu return 0 dBu, 4",
    "insert \"box\" send 0 dBu return 4 dBu { gain 3 dB }, -1",
    "insert \"box\" { gain 3 dB }, 3",
    "insert \"box\" bypassed { gain 3 dB }, 0",
  })
  void step_response_isThatOfWhatIsIn(String line, double expectedDb) {
    check("chain c {\n" + line + "\n}\n", expectedDb);
  }

  @Test
  void track_bypassed_doesNothing() {
    check("chain c bypassed {\ngain -3 dB\n}\n", 0);
  }

  @Test
  void parallel_pathBypassed_isSilent() {
    check("chain c {\nparallel {\npath \"a\"\npath \"b\" bypassed\n}\n}\n", 0);
  }

  @Test
  void parallel_bypassedAsAWhole_isAWire() {
    check("chain c {\nparallel bypassed {\npath \"a\"\npath \"b\"\n}\n}\n", 0);
  }

  @Test
  void stages_ofStructures_areInOrderAndPartial() {
    SignalPath path =
        WrittenChain.pathOf(
            """
            gain 1 dB
            insert "box" { bell 1 kHz 1 dB }
            parallel {
              path "dry"
              path "wet" { compressor threshold -30 dBFS }
            }
            mid-side {
              mid { tilt 1 dB }
              side { delay 1 ms }
            }
            multiband {
              band below 200 Hz { polarity inverted }
              band above 200 Hz { notch 1 kHz }
            }
            during 0:01 to 0:02 { ride 0:01 to 0:02 1 dB }
            high-pass 50 Hz bypassed
            """);
    assertThat(path.stages())
        .extracting(StageElement::word, StageElement::isPartial)
        .containsExactly(
            tuple("gain", false),
            tuple("bell", false),
            tuple("compressor", true),
            tuple("tilt", true),
            tuple("delay", true),
            tuple("polarity", true),
            tuple("notch", true),
            tuple("ride", true));
  }

  @Test
  void stage_ofANestedPreset_isShownAtTheOutermostApply() {
    String text = PRESETS + "chain c {\ngain 0 dB\napply outer\n}\n";
    List<StageElement> stages = WrittenChain.path(text).stages();
    assertThat(stages).hasSize(3);
    assertThat(stages.get(0).appliedAt()).isEmpty();
    assertThat(stages.get(0).shownAt()).isEqualTo(stages.get(0).place());
    for (StageElement stage : stages.subList(1, 3)) {
      assertThat(textOf(stage.shownAt())).isEqualTo("apply outer");
    }
    assertThat(textOf(stages.get(1).place())).isEqualTo("gain -2 dB");
    assertThat(textOf(stages.get(2).place())).isEqualTo("gain -1 dB");
  }

  @Test
  void preset_byItself_isBuiltForItsOwnSource() {
    Scope scope = WrittenChain.scope("preset p {\nsource bass\nhigh-pass 30 Hz\n}\n");
    List<PathElement> elements = new PathBuilder(scope).build(scope.preset("p").orElseThrow());
    assertThat(elements)
        .singleElement()
        .isInstanceOfSatisfying(
            StageElement.class,
            stage -> {
              assertThat(stage.context().source().orElseThrow().word()).isEqualTo("bass");
              assertThat(stage.context().lowestHz()).isPresent();
            });
  }

  @Test
  void preset_inAChainWithoutSource_bringsItsOwn() {
    String preset = "preset p {\nsource bass\nhigh-pass 30 Hz\n}\n";
    assertThat(WrittenChain.path(preset + "chain c {\napply p\n}\n").stages())
        .singleElement()
        .satisfies(
            stage -> {
              assertThat(stage.context().source().orElseThrow().word()).isEqualTo("bass");
              assertThat(stage.context().lowestHz()).isPresent();
            });
    assertThat(WrittenChain.path(preset + "chain c {\nsource snare\napply p\n}\n").stages())
        .singleElement()
        .satisfies(
            stage -> assertThat(stage.context().source().orElseThrow().word()).isEqualTo("snare"));
  }

  @Test
  void preset_bypassed_isOutWhereverItIsApplied() {
    Scope scope = WrittenChain.scope("preset p bypassed {\ngain 3 dB\n}\nchain c {\napply p\n}\n");
    PathBuilder builder = new PathBuilder(scope);
    assertThat(builder.build(scope.track("c").orElseThrow()).stages()).isEmpty();
    assertThat(builder.build(scope.preset("p").orElseThrow()))
        .singleElement()
        .matches(PathElement::isBypassed);
  }

  @Test
  void path_sampleRateOfTheSession_holds() {
    String session = "session \"s\" {\nsample-rate 96 kHz\n}\n";
    assertThat(WrittenChain.path(session + "chain c {\ngain 0 dB\n}\n").rate().hertz())
        .isEqualTo(96_000);
    assertThat(WrittenChain.pathOf("gain 0 dB").rate().hertz()).isEqualTo(48_000);
  }

  @Test
  void lowestNote_declared_goesBeforeThatOfTheSource() {
    SignalPath declared = WrittenChain.pathOf("source bass\nlowest-note 82 Hz\ngain 0 dB");
    assertThat(declared.lowestHz()).hasValue(82);
    assertThat(declared.isLowestDeclared()).isTrue();
    SignalPath usual = WrittenChain.pathOf("source bass\ngain 0 dB");
    assertThat(usual.lowestHz()).isPresent();
    assertThat(usual.isLowestDeclared()).isFalse();
  }

  /** Each latency of these lines is another power of two [ms]. */
  @ParameterizedTest
  @CsvSource({
    "limiter ceiling -1 dBFS look-ahead 1 ms, 1",
    "limiter ceiling -1 dBFS look-ahead 1 ms bypassed, 0",
    "insert \"box\" latency 2 ms { gate threshold -40 dBFS look-ahead 4 ms }, 6",
    "insert \"box\" latency 2 ms bypassed { gate threshold -40 dBFS look-ahead 4 ms }, 0",
    "delay 8 ms, 0",
  })
  void path_latency_addsUp(String line, double milliseconds) {
    checkLatency(line, milliseconds);
  }

  @Test
  void parallel_latency_isThatOfTheLatestPath() {
    checkLatency(
        """
        parallel {
          path "dry"
          path "a" { limiter ceiling -1 dBFS look-ahead 2 ms }
          path "b" { limiter ceiling -1 dBFS look-ahead 4 ms }
        }
        limiter ceiling -1 dBFS look-ahead 1 ms
        """,
        5);
  }

  @Test
  void responseUpTo_aStep_endsWithIt() {
    SignalPath path =
        WrittenChain.pathOf("gain 1 dB\ninsert \"box\" {\ngain 2 dB\ngain 4 dB\n}\ngain 8 dB");
    SplitElement insert = (SplitElement) path.elements().get(1);
    StageElement within = (StageElement) insert.branches().get(0).elements().get(0);
    assertThat(path.responseUpTo(path.track().steps().get(0)).decibelsAt(1000))
        .isCloseTo(1, within(ROUNDING_DB));
    assertThat(path.responseUpTo(within.stage()).decibelsAt(1000))
        .isCloseTo(7, within(ROUNDING_DB));
    assertThat(path.responseUpTo(path.track().steps().get(2)).decibelsAt(1000))
        .isCloseTo(15, within(ROUNDING_DB));
  }

  @Test
  void stage_withoutDesign_hasNoSoundAndPasses() {
    String session = "session \"s\" {\nsample-rate 8 kHz\n}\n";
    SignalPath path = WrittenChain.path(session + "chain c {\ntilt 4 kHz 3 dB\ngain -3 dB\n}\n");
    assertThat(path.stages().get(0).sound()).isEmpty();
    assertThat(path.response().decibelsAt(1000)).isCloseTo(-3, within(ROUNDING_DB));
  }

  private static void checkLatency(String lines, double milliseconds) {
    assertThat(SoundBuilder.latencySeconds(WrittenChain.pathOf(lines)))
        .as(lines)
        .isCloseTo(milliseconds / 1000, within(1e-12));
  }

  private static void check(String chain, double expectedDb) {
    assertThat(WrittenChain.path(PRESETS + chain).response().decibelsAt(1000))
        .as(chain)
        .isCloseTo(expectedDb, within(ROUNDING_DB));
  }

  private static String textOf(Place place) {
    return place.section().text().substring(place.span().start(), place.span().end());
  }
}
