package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.UsedWith;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Unread;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Words what is wrong with the settings of one stage.
 *
 * @param kind what the stage is
 * @param statement its line
 * @param catalogue the vocabulary
 * @param report where troubles go
 * @param unread what stands for a setting and could not be read; words that are no setting are
 *     added
 */
record SettingFaults(
    StageKind kind, Statement statement, Catalogue catalogue, Report report, List<Unread> unread) {

  private static final List<String> CLAUSES = List.of("as", "bypassed", "deliberate");

  /** The dimension of what a setting takes; empty if it takes no unit. */
  static Optional<Dimension> dimension(Setting setting) {
    return setting.takes() instanceof Takes.InUnit takes
        ? Optional.of(takes.unit().dimension())
        : Optional.empty();
  }

  /** Reports the equals signs of the line, all at once. */
  void equals(List<Item.Mark> marks) {
    if (marks.isEmpty()) {
      return;
    }
    report.add(
        Fault.STRAY_EQUALS,
        marks.get(0).span(),
        "`=` means nothing here",
        "It belongs to `alignment` alone.",
        "Write the setting's name and its value, parted by a blank.",
        report.fix(
            marks.size() == 1 ? "Remove `=`" : "Remove each `=` of this line",
            true,
            marks.stream()
                .map(one -> new TextEdit(report.withBlanks(one.span()), " "))
                .toArray(TextEdit[]::new)));
  }

  /** Reports a label or `bypassed` that a setting follows. */
  void misplacedMark(TextSpan span) {
    int end = statement.lineSpan().end();
    report.add(
        Fault.MISPLACED_MARK,
        span,
        "a setting follows `" + report.text(span) + "`",
        "`as`, `bypassed` and `deliberate` stand after the settings, where they are looked for.",
        "Move it to the end of the line.",
        report.fix(
            "Move it to the end",
            true,
            report.removal(span),
            new TextEdit(new TextSpan(end, end), " " + report.text(span))));
  }

  /** Reports one value where a range is wanted; of a frequency, an octave around it is offered. */
  void noRange(Setting setting, Takes.InUnit takes, Item.Amount amount, boolean isCutOff) {
    noRange(setting, takes, amount, isCutOff, "");
  }

  /** Reports one value without a name where only a range can be meant, which is written by name. */
  void unnamedRange(Setting setting, Takes.InUnit takes, Item.Amount amount) {
    noRange(setting, takes, amount, false, setting.isPositional() ? "" : setting.name() + " ");
  }

  private void noRange(
      Setting setting, Takes.InUnit takes, Item.Amount amount, boolean isCutOff, String name) {
    List<String> around =
        isCutOff
            ? List.of()
            : Readings.around(setting, amount).stream().map(one -> name + one).toList();
    report.add(
        Fault.RANGE_MISSING,
        amount.span(),
        "`" + setting.name() + (isCutOff ? "` has a range without its end" : "` takes a range"),
        setting.says(),
        "Write both ends, such as `"
            + (around.isEmpty() ? name + Readings.example(setting, takes.unit()) : around.get(0))
            + "`.",
        around.stream()
            .map(
                one -> report.change("Write `" + one + "`", true, new TextEdit(amount.span(), one)))
            .toList());
  }

  /** Reports two values where one is wanted, and offers both and the one between them. */
  void rangeUnexpected(Item.Range range, String title) {
    List<String> values = Readings.within(range);
    report.add(
        Fault.RANGE_UNEXPECTED,
        range.span(),
        title + " takes one value, not a range",
        "",
        values.isEmpty()
            ? "Write one value."
            : "Write one of them, or one between: `" + String.join("`, `", values) + "`.",
        values.stream()
            .map(
                one -> report.change("Write `" + one + "`", false, new TextEdit(range.span(), one)))
            .toList());
  }

  void strayText(Item.Text text) {
    report.add(
        Fault.STRAY_TEXT,
        text.span(),
        "`" + kind.word() + "` takes no text here",
        "",
        "Put it into a note on a line below: `note \"…\"`.");
  }

  /** The settings that a value in a unit can be for without a name. */
  List<Setting> positional() {
    return settings(one -> one.isPositional() && one.takes() instanceof Takes.InUnit);
  }

  /** Whether a word after a bare number can only be meant as its unit. */
  boolean isMeantAsUnit(String word) {
    List<String> known = known();
    boolean isWord = known.contains(word) || catalogue.stage(word).isPresent() || word.equals("to");
    return !isWord
        && (!UnitWords.near(word, dimensions()).isEmpty() || Nearest.to(word, known).isEmpty());
  }

  /** Reports a word that is no unit, behind a number that some setting could mean. */
  void unknownUnit(Item.Amount amount, String unit, TextSpan span) {
    if (GluedNumber.reportUnit(unit, span, report)) {
      return;
    }
    if (VoltLevel.isIn(unit) && VoltLevel.isTakenBy(kind)) {
      new VoltLevel(amount, span).report(report);
      return;
    }
    List<String> near =
        UnitWords.near(unit, dimensions()).stream()
            .filter(one -> kind.settings().stream().anyMatch(of -> Readings.isIn(of, amount, one)))
            .toList();
    report.unknownWord(
        Fault.UNKNOWN_UNIT,
        "`" + unit + "` is no unit",
        span,
        near,
        Report.knownHere(UnitWords.symbols(dimensions())));
  }

  private Set<Dimension> dimensions() {
    Set<Dimension> dimensions = new LinkedHashSet<>();
    kind.settings().forEach(one -> dimension(one).ifPresent(dimensions::add));
    return dimensions;
  }

  /** Reports a value that no setting can mean. */
  void stray(TextSpan span, Optional<String> unit) {
    Optional<Unit> parsed = unit.flatMap(Unit::parse);
    String spelled = parsed.map(Unit::symbol).orElse("that unit");
    List<String> taking =
        settings(one -> parsed.isPresent() && dimension(one).equals(parsed.map(Unit::dimension)))
            .stream()
            .map(Setting::name)
            .toList();
    if (!taking.isEmpty()) {
      report.add(
          Fault.WRONG_UNIT,
          span,
          "`" + report.text(span) + "` can be no setting of `" + kind.word() + "` here",
          "",
          "In " + spelled + " it takes: " + String.join(", ", taking) + ".");
      return;
    }
    report.add(
        Fault.WRONG_UNIT,
        span,
        "`" + kind.word() + "` has no setting in " + spelled,
        "",
        kind.settings().isEmpty()
            ? "Remove it; `" + kind.word() + "` takes no settings."
            : "It takes: "
                + String.join(", ", kind.settings().stream().map(Setting::name).toList())
                + ".");
  }

  /**
   * Reports a word that is no setting, with the equals sign behind it; tells whether nothing that
   * follows belongs to the stage.
   */
  boolean unknown(Item.Word word, Optional<Item.Mark> equals) {
    if (Unit.parse(word.text()).isPresent()) {
      reportNoNumber(word);
      return false;
    }
    if (StepReader.isStep(word.text(), catalogue) || DeclarationReader.isDeclaration(word.text())) {
      report.add(
          Fault.UNKNOWN_SETTING,
          word.span(),
          "`" + kind.word() + "` knows no `" + word.text() + "`, which begins a statement",
          "A statement goes on to the end of its line.",
          "Begin a line of its own with it.",
          report.change(
              "Begin a new line with `" + word.text() + "`",
              true,
              report.lineBreak(statement.offset(), word.span().start())));
      return true;
    }
    List<String> said = SettingWords.of(kind, word.text());
    List<String> near = said.isEmpty() ? Nearest.to(word.text(), known()) : said;
    if (near.isEmpty()
        && new BareName(kind, statement, report).report(word, Report.knownHere(known()))) {
      unread.add(new Unread(word.span(), List.of()));
      return false;
    }
    OtherStage other = new OtherStage(kind, statement, catalogue, report);
    if (near.isEmpty() && other.report(word)) {
      unread.add(new Unread(word.span(), kind.settings()));
      return true;
    }
    unread.add(new Unread(word.span(), settings(one -> near.contains(one.name()))));
    if (!near.isEmpty() || !other.isKnown(word)) {
      report.unknownWord(
          Fault.UNKNOWN_SETTING,
          "`" + kind.word() + "` knows no `" + word.text() + "`",
          equals.map(mark -> word.span().union(mark.span())).orElse(word.span()),
          near,
          Report.knownHere(known()));
    }
    return false;
  }

  /** Reports a value in a unit that this setting has in another stage only. */
  boolean isForOtherStage(Setting setting, Takes.InUnit takes, Item.Amount amount) {
    // Asked of every amount of a file at its start: no lambdas.
    Unit unit = Unit.parse(amount.unit().orElse("")).orElse(null);
    return unit != null
        && unit.dimension() != takes.unit().dimension()
        && new OtherStage(kind, statement, catalogue, report).report(setting, amount);
  }

  private void reportNoNumber(Item.Word unit) {
    report.add(
        Fault.VALUE_MISSING,
        unit.span(),
        "the number before `" + unit.text() + "` is missing",
        "",
        "Write it before the unit.");
    Optional<Dimension> dimension = Unit.parse(unit.text()).map(Unit::dimension);
    unread.add(new Unread(unit.span(), settings(one -> dimension(one).equals(dimension))));
  }

  private List<Setting> settings(Predicate<Setting> wanted) {
    return kind.settings().stream().filter(wanted).toList();
  }

  /** The words that mean something on the line. */
  List<String> known() {
    List<String> known = new ArrayList<>();
    for (Setting setting : kind.settings()) {
      known.add(setting.name());
      if (setting.isPositional() && setting.takes() instanceof Takes.OneOf oneOf) {
        known.addAll(oneOf.words());
      }
    }
    known.addAll(CLAUSES);
    return known;
  }

  void noValue(Setting setting, TextSpan span) {
    report.add(
        Fault.VALUE_MISSING,
        span,
        "after `" + setting.name() + "` comes " + describe(setting),
        "",
        setting.says());
  }

  private static String describe(Setting setting) {
    Takes takes = setting.takes();
    if (takes instanceof Takes.InUnit unit) {
      String one = unit.unit().dimension().description();
      return unit.isSpan()
          ? "a range, such as `" + Readings.example(setting, unit.unit()) + "`"
          : one;
    }
    if (takes instanceof Takes.OneOf oneOf) {
      return "one of " + String.join(", ", oneOf.words());
    }
    return takes instanceof Takes.Name ? "a name" : "a plain number";
  }

  /** Reports the settings that must be there and are not. */
  void missing(Settings written) {
    for (Setting setting : written.missing()) {
      report.add(
          Fault.SETTING_MISSING,
          statement.head().map(Item.Word::span).orElse(statement.lineSpan()),
          "`" + kind.word() + "` needs its " + setting.name(),
          setting.says(),
          "Write "
              + (setting.isPositional() ? "it as " : "`" + setting.name() + "` and ")
              + describe(setting)
              + ".");
    }
  }

  /** Reports what is written and does nothing, as the other settings stand. */
  void idle(Settings settings) {
    for (Written one : settings.written()) {
      if (one.setting().usedWith().isPresent() && !settings.isInEffect(one.setting())) {
        UsedWith used = one.setting().usedWith().get();
        String needed =
            used.values().isEmpty()
                ? "a `" + used.setting() + "`"
                : "`" + used.setting() + "` " + String.join(" or ", used.values());
        String found =
            settings.value(used.setting()).map(value -> ", and this is " + value).orElse("");
        report.add(
            Fault.IDLE_SETTING,
            one.span(),
            "`" + one.setting().name() + "` does nothing here: it is used with " + needed + found,
            one.setting().says(),
            "Remove it, or write " + needed + ".",
            report.fix("Remove it", true, report.removal(one.span())));
      }
    }
  }

  /** A setting that is written twice, under its own name or as another that says the same. */
  void writtenTwice(Setting setting, Setting before, TextSpan span) {
    report.add(
        Fault.SETTING_TWICE,
        span,
        setting.name().equals(before.name())
            ? "`" + setting.name() + "` is written twice"
            : "`" + setting.name() + "` says again what `" + before.name() + "` says",
        "The first one holds; the second would change it unseen.",
        "Remove one of them.",
        report.fix("Remove the second one", true, report.removal(span)));
  }
}
