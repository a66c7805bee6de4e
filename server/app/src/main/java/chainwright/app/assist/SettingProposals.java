package chainwright.app.assist;

import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.quantity.NumberText;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Proposes settings and values on the line of a stage.
 *
 * @param kind the kind of stage
 * @param source the kind of source, if it is declared
 */
record SettingProposals(StageKind kind, Optional<SourceKind> source) {

  List<Proposal> of(WrittenLine line) {
    String last = line.words().get(line.words().size() - 1);
    Optional<Setting> open =
        line.isAfterValue()
            ? Optional.empty()
            : kind.setting(last).filter(one -> !(one.takes() instanceof Takes.Flag));
    if (open.isPresent()) {
      return values(open.get(), line);
    }
    List<Proposal> proposals = new ArrayList<>();
    for (Setting setting : kind.settings()) {
      if (setting.isPositional() && isFree(setting, line)) {
        proposals.addAll(values(setting, line));
      }
    }
    for (boolean isRequired : new boolean[] {true, false}) {
      for (Setting setting : kind.settings()) {
        if (!setting.isPositional()
            && setting.byOmission() instanceof Default.Required == isRequired
            && isFree(setting, line)) {
          proposals.add(
              new Proposal(
                  setting.name(),
                  Proposal.Kind.SETTING,
                  isRequired ? "must be written" : "",
                  setting.says()));
        }
      }
    }
    for (String clause : List.of("as", "bypassed", "deliberate")) {
      proposals.add(new Proposal(clause, Proposal.Kind.WORD, "", ""));
    }
    return proposals;
  }

  private boolean isFree(Setting setting, WrittenLine line) {
    return kind.settings().stream()
        .filter(one -> one.equals(setting) || one.saysTheSameAs(setting))
        .noneMatch(one -> isWritten(one, line));
  }

  private static boolean isWritten(Setting setting, WrittenLine line) {
    if (line.words().contains(setting.name())) {
      return true;
    }
    if (setting.takes() instanceof Takes.InUnit takes && setting.isPositional()) {
      return line.units().stream().anyMatch(unit -> unit.dimension() == takes.unit().dimension());
    }
    return setting.takes() instanceof Takes.OneOf oneOf
        && line.words().stream().anyMatch(oneOf.words()::contains);
  }

  private List<Proposal> values(Setting setting, WrittenLine line) {
    if (setting.takes() instanceof Takes.OneOf oneOf) {
      return oneOf.words().stream()
          .map(word -> new Proposal(word, Proposal.Kind.VALUE, setting.name(), setting.says()))
          .toList();
    }
    RangeRow.Direction direction = line.isCut() ? RangeRow.Direction.CUT : RangeRow.Direction.BOOST;
    Optional<TradeRange> range = setting.range(source, direction);
    Set<Double> numbers = new LinkedHashSet<>();
    range.ifPresent(
        found -> {
          found.offered().ifPresent(numbers::add);
          numbers.add(found.cautiousLow());
          numbers.add(found.cautiousHigh());
          numbers.add(found.usualLow());
          numbers.add(found.usualHigh());
        });
    numbers.addAll(setting.offers());
    List<Proposal> proposals = new ArrayList<>();
    for (double number : numbers) {
      proposals.add(
          new Proposal(
              spell(setting, number),
              Proposal.Kind.VALUE,
              setting.name() + range.map(found -> ": " + place(found, number)).orElse(""),
              setting.says() + range.map(this::sources).orElse("")));
    }
    return proposals;
  }

  private String place(TradeRange range, double number) {
    String who =
        source.map(found -> " for " + found.title().toLowerCase(java.util.Locale.ROOT)).orElse("");
    if (range.offered().isPresent() && range.offered().getAsDouble() == number) {
      return "usual" + who;
    }
    if (number >= range.cautiousLow() && number <= range.cautiousHigh()) {
      return "cautious" + who;
    }
    return switch (range.verdict(number)) {
      case USUAL -> "usual" + who;
      case UNCOMMON -> "uncommon" + who;
      case EXTREME -> "extreme" + who;
    };
  }

  private String sources(TradeRange range) {
    return " Source: "
        + String.join("; ", range.sources().stream().map(Citation::spelt).toList())
        + ".";
  }

  static String spell(Setting setting, double number) {
    if (!(setting.takes() instanceof Takes.InUnit takes)) {
      return NumberText.format(number);
    }
    if (takes.unit() == Unit.TO_ONE) {
      return NumberText.format(number) + ":1";
    }
    return takes.unit() == Unit.HERTZ && number >= 1000
        ? NumberText.format(number / 1000) + " kHz"
        : NumberText.format(number) + " " + takes.unit().symbol();
  }
}
