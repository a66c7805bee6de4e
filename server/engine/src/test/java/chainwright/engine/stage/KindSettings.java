package chainwright.engine.stage;

import chainwright.notation.catalogue.Default;
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
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The settings of a stage kind at both ends of what they can mean, without a text. */
final class KindSettings {

  private KindSettings() {}

  /** The kind as it is when nothing is written, and with each setting at each of its ends. */
  static List<StageContext> atTheirEnds(StageKind kind, double rateHz) {
    List<StageContext> contexts = new ArrayList<>();
    contexts.add(context(kind, rateHz, List.of()));
    for (Setting setting : kind.settings()) {
      for (Value value : ends(setting, rateHz)) {
        contexts.add(context(kind, rateHz, List.of(written(setting, value))));
      }
    }
    return contexts;
  }

  /** Some settings, and what has no default in the middle of its limits. */
  static StageContext context(StageKind kind, double rateHz, List<Written> special) {
    List<Written> all = new ArrayList<>(special);
    for (Setting setting : kind.settings()) {
      boolean isMissing =
          setting.byOmission() instanceof Default.Required
              && special.stream().noneMatch(one -> one.setting().equals(setting));
      if (isMissing) {
        all.add(written(setting, usual(setting, rateHz)));
      }
    }
    return new StageContext(
        new Settings(kind, all),
        SampleRate.ofHertz(rateHz),
        Optional.empty(),
        OptionalDouble.empty());
  }

  static String name(StageContext context) {
    return context.settings().kind().word()
        + " at "
        + context.rate()
        + " with "
        + context.settings().written();
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
