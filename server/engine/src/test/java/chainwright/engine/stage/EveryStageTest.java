package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.Response;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.model.Settings;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every stage of the catalogue, each of its settings at both ends of what it can mean. */
class EveryStageTest {

  private static final double[] RATES_HZ = {8_000, 44_100, 48_000, 192_000, 384_000};

  private static final double[] SHARES_OF_RATE = {0.0001, 0.001, 0.01, 0.1, 0.3, 0.45, 0.4999};

  private static final double[] LEVELS_DB = {-120, -60, -20, -1, 0, 6};

  static Stream<String> words() {
    return Catalogue.load().stages().stream()
        .filter(kind -> kind.family() != Family.STRUCTURE)
        .map(StageKind::word);
  }

  @ParameterizedTest
  @MethodSource("words")
  void stage_ofTheCatalogue_hasItsModel(String word) {
    assertThat(StageModels.find(word)).isPresent();
  }

  @Test
  void stage_ofNoCatalogue_hasNone() {
    assertThat(StageModels.find("no-such-stage")).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("words")
  void stage_settingsAtTheirEnds_areDesignedAndFinite(String word) {
    StageKind kind = Catalogue.load().stage(word).orElseThrow();
    for (double rateHz : RATES_HZ) {
      KindSettings.atTheirEnds(kind, rateHz).forEach(EveryStageTest::check);
    }
  }

  private static void check(StageContext context) {
    double rateHz = context.rate().hertz();
    String name = KindSettings.name(context);
    Optional<StageSound> sound = StageModels.design(context);
    assertThat(sound.isPresent()).as(name).isEqualTo(!allowsNoDesign(context.settings(), rateHz));
    sound.ifPresent(
        designed -> {
          checkFinite(name, designed.response(), rateHz);
          designed.prototype().ifPresent(prototype -> checkFinite(name, prototype, rateHz));
          designed.detection().ifPresent(band -> checkFinite(name, band, rateHz));
          designed.curve().ifPresent(curve -> checkFinite(name, curve));
        });
  }

  /** What the models document: a frequency from half the rate on, and 50 % of distortion. */
  private static boolean allowsNoDesign(Settings settings, double rateHz) {
    return switch (settings.kind().word()) {
      case "tilt" -> settings.number("pivot").orElseThrow() >= rateHz / 2;
      case "treble-limiter" -> settings.number("cutoff").orElseThrow() >= rateHz / 2;
      case "saturation" -> settings.number("thd-at-alignment").orElseThrow() >= 50;
      default -> false;
    };
  }

  private static void checkFinite(String name, Response response, double rateHz) {
    double[] hertz = Arrays.stream(SHARES_OF_RATE).map(share -> share * rateHz).toArray();
    assertThat(Arrays.stream(response.toDecibels(hertz)).boxed())
        .as(name)
        .allMatch(gainDb -> gainDb < 100);
    assertThat(Arrays.stream(response.toPhase(hertz)).boxed()).as(name).allMatch(Double::isFinite);
    assertThat(Arrays.stream(response.toGroupDelay(hertz)).boxed())
        .as(name)
        .allMatch(Double::isFinite);
  }

  private static void checkFinite(String name, StaticCurve curve) {
    for (double levelDb : LEVELS_DB) {
      assertThat(curve.outputDb(levelDb)).as("%s, %s dB", name, levelDb).isFinite();
    }
  }
}
