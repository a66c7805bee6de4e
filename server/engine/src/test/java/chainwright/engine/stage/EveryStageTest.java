package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.Response;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Quantity;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
      check(kind, rateHz, List.of());
      for (Setting setting : kind.settings()) {
        for (Value value : ends(setting, rateHz)) {
          check(kind, rateHz, List.of(written(setting, value)));
        }
      }
    }
  }

  private static void check(StageKind kind, double rateHz, List<Written> special) {
    List<Written> all = new ArrayList<>(special);
    for (Setting setting : kind.settings()) {
      boolean isMissing =
          setting.byOmission() instanceof Default.Required
              && special.stream().noneMatch(one -> one.setting().equals(setting));
      if (isMissing) {
        all.add(written(setting, usual(setting, rateHz)));
      }
    }
    Settings settings = new Settings(kind, all);
    StageContext context =
        new StageContext(
            settings, SampleRate.ofHertz(rateHz), Optional.empty(), OptionalDouble.empty());
    String name = kind.word() + " at " + rateHz + " Hz with " + special;
    Optional<StageSound> sound = StageModels.design(context);
    assertThat(sound.isPresent()).as(name).isEqualTo(!allowsNoDesign(settings, rateHz));
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

  private static Written written(Setting setting, Value value) {
    return new Written(setting, value, Optional.empty(), new TextSpan(0, 0));
  }

  private static List<Value> ends(Setting setting, double rateHz) {
    if (setting.takes() instanceof Takes.OneOf words) {
      return words.words().stream().<Value>map(Value.Word::new).toList();
    }
    List<Value> values = new ArrayList<>();
    for (Limit limit : List.of(setting.low(), setting.high())) {
      limit(limit, rateHz).ifPresent(number -> values.add(value(setting, number, rateHz)));
    }
    return values;
  }

  private static Value usual(Setting setting, double rateHz) {
    if (setting.takes() instanceof Takes.OneOf words) {
      return new Value.Word(words.words().get(0));
    }
    return setting.takes() instanceof Takes.Name
        ? new Value.Reference("other")
        : value(setting, middle(setting, rateHz), rateHz);
  }

  private static Value value(Setting setting, double number, double rateHz) {
    Quantity quantity = Settings.quantity(setting.takes(), number).orElseThrow();
    boolean isSpan = setting.takes() instanceof Takes.InUnit unit && unit.isSpan();
    if (!isSpan) {
      return new Value.Of(quantity);
    }
    Quantity middle = Settings.quantity(setting.takes(), middle(setting, rateHz)).orElseThrow();
    return quantity.baseValue() < middle.baseValue()
        ? new Value.Span(quantity, middle)
        : new Value.Span(middle, quantity);
  }

  private static double middle(Setting setting, double rateHz) {
    return (limit(setting.low(), rateHz).orElseThrow()
            + limit(setting.high(), rateHz).orElseThrow())
        / 2;
  }

  private static OptionalDouble limit(Limit limit, double rateHz) {
    if (limit instanceof Limit.Fixed fixed) {
      return OptionalDouble.of(fixed.value());
    }
    return limit instanceof Limit.OfSampleRate share
        ? OptionalDouble.of(share.share() * rateHz)
        : OptionalDouble.empty();
  }
}
