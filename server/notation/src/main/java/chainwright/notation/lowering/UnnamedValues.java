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
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;

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
    for (Item.Amount amount : amounts) {
      List<Meaning> possible = meanings.getOrDefault(amount, meanings(amount, left));
      report(amount, possible);
      // What must be written stays missing as long as the value may be meant for another setting.
      boolean isClear = possible.size() == 1;
      List<Setting> meant = new ArrayList<>();
      for (Meaning one : possible) {
        if ((isClear || !one.isRequired()) && !isAmong(meant, one.setting)) {
          meant.add(one.setting);
        }
      }
      unread.add(new Unread(amount.span(), meant));
    }
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
    boolean isBare = amount.unit().isEmpty() && !amount.number().contains(":");
    List<Meaning> meanings = new ArrayList<>();
    for (Setting setting : free) {
      if (setting.isPositional() || !isBare) {
        Readings.of(setting, amount).forEach(one -> meanings.add(new Meaning(setting, one)));
      }
    }
    if (meanings.isEmpty() && amount.unit().isPresent()) {
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
    boolean isBare = amount.unit().isEmpty() && !amount.number().contains(":");
    if (isBare) {
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
