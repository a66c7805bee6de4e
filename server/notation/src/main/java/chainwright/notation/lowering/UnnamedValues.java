package chainwright.notation.lowering;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The values of one line that do not say which setting they are for.
 *
 * <p>They are judged when the line has been read to its end: only then it is known which settings
 * are still to be had. A setting is offered only where it could mean the value.
 */
final class UnnamedValues {

  /** More choices than this are no help. */
  private static final int OFFERED = 4;

  private final StageKind kind;
  private final Report report;
  private final SettingFaults faults;
  private final List<Unread> unread;
  private final List<Item.Amount> amounts = new ArrayList<>();

  /**
   * Begins a line.
   *
   * @param kind what the stage is
   * @param report where troubles go
   * @param faults words what no setting can mean
   * @param unread what could not be read; each value is added
   */
  UnnamedValues(StageKind kind, Report report, SettingFaults faults, List<Unread> unread) {
    this.kind = kind;
    this.report = report;
    this.faults = faults;
    this.unread = unread;
  }

  /** A setting, and how the value is written for it. */
  private record Meaning(Setting setting, String written) {

    boolean isRequired() {
      return setting.byOmission() instanceof Default.Required;
    }

    /** What stands in the place of the value. */
    String mended() {
      return setting.isPositional() ? written : setting.name() + " " + written;
    }
  }

  void add(Item.Amount amount) {
    amounts.add(amount);
  }

  /** Forgets a value, if it is there, since something else tells what it is for. */
  boolean remove(Item.Amount amount) {
    return amounts.removeIf(one -> one.span().equals(amount.span()));
  }

  boolean isEmpty() {
    return amounts.isEmpty();
  }

  /**
   * Reports each value.
   *
   * @param free the settings that are not written
   */
  void report(List<Setting> free) {
    // Each value by itself, not by what it says; to compare records would make classes at a start.
    IdentityHashMap<Item.Amount, List<Meaning>> meanings = new IdentityHashMap<>();
    List<Setting> left = new ArrayList<>(free);
    boolean isNarrower = true;
    while (isNarrower) {
      isNarrower = false;
      for (Item.Amount amount : amounts) {
        if (!meanings.containsKey(amount)) {
          List<Meaning> possible = meanings(amount, left);
          if (possible.size() == 1) {
            meanings.put(amount, possible);
            Setting only = possible.get(0).setting;
            left.removeIf(one -> one.name().equals(only.name()) || one.saysTheSameAs(only));
            isNarrower = true;
          }
        }
      }
    }
    List<Named> named = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    for (Item.Amount amount : amounts) {
      List<Meaning> possible =
          meanings.getOrDefault(amount, meanings(amount, left)).stream()
              .filter(one -> !taken.contains(one.setting.name()))
              .toList();
      boolean isUnnamed = isUnnamed(amount, possible);
      Optional<Meaning> likely = likely(possible, isUnnamed);
      likely.ifPresent(one -> taken.add(one.setting.name()));
      Optional<Setting> range = possible.isEmpty() ? range(amount, left) : Optional.empty();
      if (likely.isPresent() && isUnnamed) {
        named.add(new Named(amount, likely.get()));
      } else if (range.isPresent() && range.get().takes() instanceof Takes.InUnit takes) {
        faults.unnamedRange(range.get(), takes, amount);
      } else {
        report(amount, possible);
      }
      // What must be written stays missing as long as the value may be meant for another setting.
      boolean isClear = likely.isPresent();
      List<Meaning> open = isClear ? likely.stream().toList() : possible;
      List<Setting> meant = new ArrayList<>(range.stream().toList());
      for (Meaning one : open) {
        if ((isClear || !one.isRequired()) && !isAmong(meant, one.setting)) {
          meant.add(one.setting);
        }
      }
      unread.add(new Unread(amount.span(), meant));
    }
    if (!named.isEmpty()) {
      reportUnnamed(named);
    }
  }

  /** The setting that takes a range in the unit of a value, if there is one. */
  private static Optional<Setting> range(Item.Amount amount, List<Setting> free) {
    Optional<Dimension> dimension = Readings.dimension(amount);
    return free.stream()
        .filter(one -> one.takes() instanceof Takes.InUnit takes && takes.isSpan())
        .filter(one -> dimension.isPresent() && SettingFaults.dimension(one).equals(dimension))
        .findFirst();
  }

  /** A value, and the setting that it is likely to be for. */
  private record Named(Item.Amount amount, Meaning meaning) {}

  /** The one meaning; among several, if only the name is missing, the one that must be written. */
  private static Optional<Meaning> likely(List<Meaning> meanings, boolean isUnnamed) {
    List<Meaning> required = meanings.stream().filter(Meaning::isRequired).toList();
    List<Meaning> narrowed = required.isEmpty() || !isUnnamed ? meanings : required;
    return narrowed.size() == 1 ? Optional.of(narrowed.get(0)) : Optional.empty();
  }

  /** Whether nothing is wrong with a value but that its name is missing. */
  private static boolean isUnnamed(Item.Amount amount, List<Meaning> meanings) {
    return !isBare(amount) && meanings.stream().anyMatch(one -> isSaid(one, amount));
  }

  private static boolean isBare(Item.Amount amount) {
    return amount.unit().isEmpty() && !amount.number().contains(":");
  }

  private void reportUnnamed(List<Named> named) {
    boolean isOne = named.size() == 1;
    TextSpan span = named.get(0).amount.span().union(named.get(named.size() - 1).amount.span());
    List<String> written =
        named.stream().map(one -> "`" + report.text(one.amount.span()) + "`").toList();
    List<String> mended = named.stream().map(one -> "`" + one.meaning.mended() + "`").toList();
    report.add(
        Fault.SETTING_UNNAMED,
        span,
        String.join(" and ", written)
            + (isOne ? " does not say which setting it is" : " do not say which settings they are"),
        "`" + kind.word() + "` has more than one setting in this unit, or writes this one by name.",
        "Write " + String.join(" and ", mended) + ".",
        report.change(
            "Write " + String.join(" and ", mended),
            true,
            named.stream()
                .map(one -> new TextEdit(one.amount.span(), one.meaning.mended()))
                .toArray(TextEdit[]::new)));
  }

  private static boolean isAmong(List<Setting> settings, Setting setting) {
    for (Setting one : settings) {
      if (one.name().equals(setting.name())) {
        return true;
      }
    }
    return false;
  }

  /** What a value can mean; a number without a unit can only stand where no name is needed. */
  private static List<Meaning> meanings(Item.Amount amount, List<Setting> free) {
    List<Meaning> meanings = new ArrayList<>();
    for (Setting setting : free) {
      if (setting.isPositional() || !isBare(amount)) {
        Readings.of(setting, amount).forEach(one -> meanings.add(new Meaning(setting, one)));
      }
    }
    boolean isAnalogue = amount.unit().flatMap(Unit::parse).filter(Unit.DBU::equals).isPresent();
    if (meanings.isEmpty() && amount.unit().isPresent() && !isAnalogue) {
      // The number may be right and the unit a slip, where something must be written anyway.
      Item.Amount bare =
          new Item.Amount(
              amount.kind(),
              amount.number(),
              amount.numberSpan(),
              Optional.empty(),
              new TextSpan(amount.numberSpan().end(), amount.numberSpan().end()));
      for (Setting setting : free) {
        if (setting.isPositional() && setting.byOmission() instanceof Default.Required) {
          Readings.of(setting, bare).forEach(one -> meanings.add(new Meaning(setting, one)));
        }
      }
    }
    boolean isSettled = meanings.stream().anyMatch(one -> isUnitKept(one, amount));
    meanings.sort(Comparator.comparing(one -> !one.isRequired()));
    // A mistaken unit is a likely slip only for what must be written.
    meanings.removeIf(one -> isSettled && !isUnitKept(one, amount) && !one.isRequired());
    return meanings;
  }

  private static boolean isUnitKept(Meaning meaning, Item.Amount amount) {
    return meaning.setting.takes() instanceof Takes.InUnit takes
        && amount
            .unit()
            .flatMap(Unit::parse)
            .filter(unit -> unit.dimension() == takes.unit().dimension())
            .isPresent();
  }

  private void report(Item.Amount amount, List<Meaning> meanings) {
    String written = report.text(amount.span());
    if (isBare(amount)) {
      report.add(
          Fault.MISSING_UNIT,
          amount.span(),
          "the number " + amount.number() + " has no unit",
          "A number without a unit could mean anything.",
          meanings.isEmpty()
              ? "Write the setting's name before it and its unit after it."
              : "Write " + choices(meanings) + ".",
          fixes(amount, meanings));
    } else if (meanings.isEmpty()) {
      faults.stray(amount.span(), amount.unit());
    } else if (meanings.stream().noneMatch(one -> isSaid(one, amount))) {
      report.add(
          Fault.WRONG_UNIT,
          amount.span(),
          "`" + kind.word() + "` has no setting that could be " + written,
          "",
          "Write " + choices(meanings) + ".",
          fixes(amount, meanings));
    } else {
      report.add(
          Fault.SETTING_UNNAMED,
          amount.span(),
          "`" + written + "` does not say which setting it is",
          "`"
              + kind.word()
              + "` has more than one setting in this unit, or writes this one by name.",
          "Write " + choices(meanings) + ".",
          fixes(amount, meanings));
    }
  }

  /** Whether a meaning is in the unit that is written; a ratio and a clock bear theirs. */
  private static boolean isSaid(Meaning meaning, Item.Amount amount) {
    return amount.number().contains(":") || isUnitKept(meaning, amount);
  }

  private static String choices(List<Meaning> meanings) {
    List<String> choices =
        meanings.stream()
            .limit(OFFERED)
            .map(
                one ->
                    one.setting.isPositional()
                        ? "`" + one.written + "` for the " + one.setting.name()
                        : "`" + one.mended() + "`")
            .toList();
    return String.join(", or ", choices);
  }

  private List<Fix> fixes(Item.Amount amount, List<Meaning> meanings) {
    boolean isClear = meanings.stream().filter(Meaning::isRequired).count() == 1;
    List<Fix> fixes = new ArrayList<>();
    for (Meaning one : meanings.stream().limit(OFFERED).toList()) {
      String name = one.setting.isPositional() ? " (" + one.setting.name() + ")" : "";
      fixes.add(
          report.change(
              "Write `" + one.mended() + "`" + name,
              fixes.isEmpty() && (isClear || meanings.size() == 1),
              new TextEdit(amount.span(), one.mended())));
    }
    return fixes;
  }
}
