package chainwright.notation.lowering;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Deliberate;
import chainwright.notation.model.Name;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads what stands on the line of one stage: its title, its settings and its clauses. */
final class SettingsReader {

  /** What a line says. */
  record Line(String title, Settings settings, Clauses clauses) {}

  private final StageKind kind;
  private final Statement statement;
  private final boolean takesTitle;
  private final Report report;
  private final AmountReader amounts;
  private final List<Item> items;
  private final List<Written> written = new ArrayList<>();

  /** Settings that something was written for, even if it could not be read. */
  private final Set<String> attempted = new HashSet<>();

  private final List<Deliberate> deliberates = new ArrayList<>();
  private Optional<Name> label = Optional.empty();
  private Optional<TextSpan> bypassed = Optional.empty();
  private String title = "";
  private int next;

  private SettingsReader(StageKind kind, Statement statement, boolean takesTitle, Report report) {
    this.kind = kind;
    this.statement = statement;
    this.takesTitle = takesTitle;
    this.report = report;
    this.amounts = new AmountReader(report);
    this.items = statement.items();
  }

  static Line read(StageKind kind, Statement statement, boolean takesTitle, Report report) {
    SettingsReader reader = new SettingsReader(kind, statement, takesTitle, report);
    while (reader.next < reader.items.size()) {
      reader.readItem(reader.items.get(reader.next++));
    }
    reader.reportMissing();
    return new Line(
        reader.title,
        new Settings(kind, reader.written),
        new Clauses(reader.label, reader.bypassed, reader.deliberates, List.of()));
  }

  private void readItem(Item item) {
    if (item instanceof Item.Word word) {
      readWord(word);
    } else if (item instanceof Item.Amount amount) {
      readPositional(amount);
    } else if (item instanceof Item.Range range) {
      readPositional(range);
    } else if (item instanceof Item.Text text) {
      if (takesTitle && title.isEmpty()) {
        title = text.text();
      } else {
        report.error(
            "stray-text",
            text.span(),
            "`" + kind.word() + "` takes no text here",
            "",
            "Put it into a note on a line below: `note \"…\"`.");
      }
    } else if (item instanceof Item.Mark mark && mark.text().equals("=")) {
      report.error(
          "stray-character",
          mark.span(),
          "`=` means nothing here",
          "",
          "Write the setting's name and its value, parted by a blank.",
          report.fix("Remove `=`", true, new TextEdit(mark.span(), "")));
    }
  }

  private void readWord(Item.Word word) {
    switch (word.text()) {
      case "as" -> label = nameAfter(word, "as", "a name, such as `as bite`");
      case "bypassed" -> bypassed = Optional.of(word.span());
      case "deliberate" -> readDeliberate(word);
      default -> {
        Optional<Setting> setting = kind.setting(word.text());
        if (setting.isEmpty()) {
          setting = settingOfWord(word.text());
          if (setting.isPresent()) {
            add(setting.get(), new Value.Word(word.text()), Optional.empty(), word.span());
          } else {
            reportUnknown(word);
          }
        } else {
          readNamed(setting.get(), word);
        }
      }
    }
  }

  private Optional<Setting> settingOfWord(String word) {
    return kind.settings().stream()
        .filter(Setting::isPositional)
        .filter(one -> one.takes() instanceof Takes.OneOf oneOf && oneOf.words().contains(word))
        .findFirst();
  }

  private void readDeliberate(Item.Word word) {
    Optional<Name> rule = nameAfter(word, "deliberate", "the name of a rule, then the reason");
    if (rule.isEmpty()) {
      return;
    }
    String reason = "";
    TextSpan span = word.span().union(rule.get().span());
    if (next < items.size() && items.get(next) instanceof Item.Text text) {
      next++;
      reason = text.text().strip();
      span = span.union(text.span());
    }
    if (reason.isEmpty()) {
      report.error(
          "reason-missing",
          span,
          "`deliberate " + rule.get().text() + "` gives no reason",
          "A rule is only silenced for a reason that the next reader can judge.",
          "Write the reason in quotes after the rule's name.");
    }
    deliberates.add(new Deliberate(rule.get(), reason, span));
  }

  private Optional<Name> nameAfter(Item.Word word, String keyword, String expected) {
    if (next < items.size() && items.get(next) instanceof Item.Word name) {
      next++;
      return Optional.of(new Name(name.text(), name.span()));
    }
    report.error(
        "name-missing",
        word.span(),
        "after `" + keyword + "` comes " + expected,
        "",
        "Write it after `" + keyword + "`.");
    return Optional.empty();
  }

  private void readNamed(Setting setting, Item.Word name) {
    attempted.add(setting.name());
    Optional<TextSpan> nameSpan = Optional.of(name.span());
    if (setting.takes() instanceof Takes.Flag) {
      add(setting, new Value.Flag(), nameSpan, name.span());
      return;
    }
    if (next >= items.size()) {
      reportNoValue(setting, name.span());
      return;
    }
    Item item = items.get(next);
    Optional<Value> value = Optional.empty();
    boolean isTaken = true;
    String title = "`" + setting.name() + "`";
    if (setting.takes() instanceof Takes.InUnit takes && item instanceof Item.Amount amount) {
      value = amounts.read(amount, takes.unit(), title).map(one -> asValue(takes, one));
    } else if (setting.takes() instanceof Takes.InUnit takes && item instanceof Item.Range range) {
      value = readRange(takes, range, title);
    } else if (setting.takes() instanceof Takes.Quality && item instanceof Item.Amount amount) {
      value = amounts.readBare(amount, Dimension.QUALITY, title).map(Value.Of::new);
    } else if (setting.takes() instanceof Takes.PlainNumber && item instanceof Item.Amount amount) {
      value = amounts.readBare(amount, Dimension.COUNT, title).map(Value.Of::new);
    } else if (setting.takes() instanceof Takes.OneOf oneOf && item instanceof Item.Word word) {
      value = readOneOf(setting, oneOf, word);
    } else if (setting.takes() instanceof Takes.Name && item instanceof Item.Word word) {
      value = Optional.of(new Value.Reference(word.text()));
    } else {
      isTaken = false;
      reportNoValue(setting, name.span());
    }
    if (isTaken) {
      next++;
    }
    value.ifPresent(one -> add(setting, one, nameSpan, item.span()));
  }

  private Optional<Value> readOneOf(Setting setting, Takes.OneOf oneOf, Item.Word word) {
    if (oneOf.words().contains(word.text())) {
      return Optional.of(new Value.Word(word.text()));
    }
    report.unknownWord(
        "unknown-word",
        "`" + setting.name() + "` cannot be `" + word.text() + "`",
        word.span(),
        word.text(),
        oneOf.words());
    return Optional.empty();
  }

  private static Value asValue(Takes.InUnit takes, Quantity quantity) {
    return takes.isSpan() ? new Value.Span(quantity, quantity) : new Value.Of(quantity);
  }

  private Optional<Value> readRange(Takes.InUnit takes, Item.Range range, String title) {
    if (!takes.isSpan()) {
      report.error(
          "range-unexpected",
          range.span(),
          title + " takes one value, not a range",
          "",
          "Write one value.");
      return Optional.empty();
    }
    return amounts.read(range, takes.unit(), title).map(ends -> new Value.Span(ends[0], ends[1]));
  }

  private void readPositional(Item.Range range) {
    Optional<Setting> setting =
        kind.settings().stream()
            .filter(Setting::isPositional)
            .filter(one -> one.takes() instanceof Takes.InUnit takes && takes.isSpan())
            .findFirst();
    if (setting.isPresent() && setting.get().takes() instanceof Takes.InUnit takes) {
      readRange(takes, range, "`" + setting.get().name() + "`")
          .ifPresent(value -> add(setting.get(), value, Optional.empty(), range.span()));
    } else {
      reportStray(range.span(), spell(range.low().unit().or(() -> range.high().unit())));
    }
  }

  private void readPositional(Item.Amount amount) {
    Optional<Dimension> dimension = dimension(amount);
    if (dimension.isEmpty()) {
      reportBare(amount);
      return;
    }
    for (Setting setting : kind.settings()) {
      if (setting.isPositional()
          && setting.takes() instanceof Takes.InUnit takes
          && takes.unit().dimension() == dimension.get()) {
        attempted.add(setting.name());
        amounts
            .read(amount, takes.unit(), "`" + setting.name() + "`")
            .ifPresent(
                quantity ->
                    add(setting, asValue(takes, quantity), Optional.empty(), amount.span()));
        return;
      }
    }
    reportUnnamed(amount, dimension.get());
  }

  private static Optional<Dimension> dimension(Item.Amount amount) {
    return switch (amount.kind()) {
      case COLON_NUMBER ->
          Optional.of(
              amount.number().contains(".") || amount.number().startsWith("0")
                  ? Dimension.TIME
                  : Dimension.RATIO);
      default -> amount.unit().flatMap(Unit::parse).map(Unit::dimension);
    };
  }

  private void reportBare(Item.Amount amount) {
    if (amount.unit().isPresent()) {
      Set<String> units = new LinkedHashSet<>();
      for (Setting setting : kind.settings()) {
        if (setting.takes() instanceof Takes.InUnit takes) {
          units.add(takes.unit().symbol());
        }
      }
      report.unknownWord(
          "unknown-unit",
          "`" + amount.unit().get() + "` is no unit",
          amount.unitSpan(),
          amount.unit().get(),
          units);
      kind.settings().stream()
          .filter(one -> one.isPositional() && one.takes() instanceof Takes.InUnit)
          .forEach(one -> attempted.add(one.name()));
      return;
    }
    List<Fix> fixes = new ArrayList<>();
    List<String> candidates = new ArrayList<>();
    for (Setting setting : kind.settings()) {
      if (setting.isPositional()
          && isFree(setting)
          && setting.takes() instanceof Takes.InUnit takes) {
        String mended = amount.number() + " " + takes.unit().symbol();
        attempted.add(setting.name());
        candidates.add("`" + mended + "` for the " + setting.name());
        fixes.add(
            report.change(
                "Write `" + mended + "` (" + setting.name() + ")",
                fixes.isEmpty(),
                new TextEdit(amount.span(), mended)));
      }
    }
    report.error(
        "missing-unit",
        amount.span(),
        "the number " + amount.number() + " has no unit",
        "A number without a unit could mean anything.",
        candidates.isEmpty()
            ? "Write the setting's name before it and its unit after it."
            : "Write " + String.join(", or ", candidates) + ".",
        fixes);
  }

  private void reportUnnamed(Item.Amount amount, Dimension dimension) {
    List<Setting> candidates =
        kind.settings().stream()
            .filter(this::isFree)
            .filter(
                one ->
                    one.takes() instanceof Takes.InUnit takes
                        && takes.unit().dimension() == dimension)
            .toList();
    if (candidates.isEmpty()) {
      reportStray(amount.span(), spell(amount.unit()));
      return;
    }
    String written = statementText(amount.span());
    report.error(
        "setting-unnamed",
        amount.span(),
        "`" + written + "` does not say which setting it is",
        "`" + kind.word() + "` has more than one setting in this unit, or writes this one by name.",
        "Write its name before it: "
            + String.join(", ", candidates.stream().map(Setting::name).limit(6).toList())
            + ".",
        candidates.stream()
            .limit(4)
            .map(
                one ->
                    report.change(
                        "Write `" + one.name() + " " + written + "`",
                        candidates.size() == 1,
                        new TextEdit(
                            new TextSpan(amount.span().start(), amount.span().start()),
                            one.name() + " ")))
            .toList());
  }

  private void reportStray(TextSpan span, String unit) {
    report.error(
        "wrong-unit",
        span,
        "`" + kind.word() + "` has no setting in " + unit,
        "",
        "It takes: "
            + String.join(", ", kind.settings().stream().map(Setting::name).toList())
            + ".");
  }

  private static String spell(Optional<String> unit) {
    return unit.flatMap(Unit::parse).map(Unit::symbol).orElse("that unit");
  }

  private void reportUnknown(Item.Word word) {
    List<String> known = new ArrayList<>();
    for (Setting setting : kind.settings()) {
      known.add(setting.name());
      if (setting.isPositional() && setting.takes() instanceof Takes.OneOf oneOf) {
        known.addAll(oneOf.words());
      }
    }
    known.addAll(List.of("as", "bypassed", "deliberate"));
    report.unknownWord(
        "unknown-setting",
        "`" + kind.word() + "` knows no `" + word.text() + "`",
        word.span(),
        word.text(),
        known);
    boolean isFollowedByItsValue =
        next < items.size()
            && (items.get(next) instanceof Item.Amount || items.get(next) instanceof Item.Range);
    if (isFollowedByItsValue) {
      next++;
    }
  }

  private void reportNoValue(Setting setting, TextSpan span) {
    report.error(
        "value-missing",
        span,
        "after `" + setting.name() + "` comes " + describe(setting.takes()),
        "",
        setting.says());
  }

  private static String describe(Takes takes) {
    if (takes instanceof Takes.InUnit unit) {
      String one = unit.unit().dimension().description();
      return unit.isSpan()
          ? one + ", or a range such as `5 to 9 " + unit.unit().symbol() + "`"
          : one;
    }
    if (takes instanceof Takes.OneOf oneOf) {
      return "one of " + String.join(", ", oneOf.words());
    }
    return takes instanceof Takes.Name ? "a name" : "a plain number";
  }

  private void add(Setting setting, Value value, Optional<TextSpan> nameSpan, TextSpan valueSpan) {
    TextSpan span = nameSpan.map(name -> name.union(valueSpan)).orElse(valueSpan);
    if (!isFree(setting)) {
      report.error(
          "setting-twice",
          span,
          "`" + setting.name() + "` is written twice",
          "The first one holds; the second would change it unseen.",
          "Remove one of them.",
          report.fix("Remove the second one", true, removal(span)));
      return;
    }
    written.add(new Written(setting, value, nameSpan, valueSpan));
  }

  /** Removes a stretch of the line with the blanks before it. */
  private TextEdit removal(TextSpan span) {
    String text = statement.node().text();
    int start = span.start();
    while (start > statement.offset()
        && Character.isWhitespace(text.charAt(start - 1 - statement.offset()))) {
      start--;
    }
    return new TextEdit(new TextSpan(start, span.end()), "");
  }

  private String statementText(TextSpan span) {
    return statement
        .node()
        .text()
        .substring(span.start() - statement.offset(), span.end() - statement.offset());
  }

  private boolean isFree(Setting setting) {
    return written.stream().noneMatch(one -> one.setting().name().equals(setting.name()));
  }

  private void reportMissing() {
    for (Setting setting : kind.settings()) {
      if (setting.byOmission() instanceof Default.Required
          && isFree(setting)
          && !attempted.contains(setting.name())) {
        report.error(
            "setting-missing",
            statement.head().map(Item.Word::span).orElse(statement.lineSpan()),
            "`" + kind.word() + "` needs its " + setting.name(),
            setting.says(),
            "Write "
                + (setting.isPositional() ? "it as " : "`" + setting.name() + "` and ")
                + describe(setting.takes())
                + ".");
      }
    }
  }
}
