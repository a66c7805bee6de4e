package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Unread;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Bandwidth;
import chainwright.quantity.Dimension;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads what stands on the line of one stage: its title, its settings and its clauses. */
final class SettingsReader {

  /** What a line says. */
  record Line(String title, Settings settings, Clauses clauses) {}

  private final StageKind kind;
  private final boolean takesTitle;
  private final Report report;
  private final AmountReader amounts;
  private final SettingFaults faults;
  private final UnnamedValues unnamed;
  private final BlankSlips slips;
  private final List<Item> items;
  private final ClauseReader clauses;
  private final List<Item.Mark> equals = new ArrayList<>();
  private final List<Written> written = new ArrayList<>();

  private final List<Unread> unread = new ArrayList<>();
  private String title = "";
  private int next;

  private SettingsReader(
      StageKind kind, Statement statement, boolean takesTitle, Catalogue catalogue, Report report) {
    this.kind = kind;
    this.takesTitle = takesTitle;
    this.report = report;
    this.amounts = new AmountReader(report);
    this.faults = new SettingFaults(kind, statement, catalogue, report, unread);
    this.unnamed = new UnnamedValues(kind, report, faults, unread);
    this.slips = new BlankSlips(kind, report, unread);
    this.items = statement.items();
    this.clauses = new ClauseReader(items, report);
  }

  static Line read(
      StageKind kind, Statement statement, boolean takesTitle, Catalogue catalogue, Report report) {
    SettingsReader reader = new SettingsReader(kind, statement, takesTitle, catalogue, report);
    for (TextSpan span : report.unreadIn(statement.lineSpan())) {
      reader.unread.add(new Unread(span, List.of()));
    }
    while (reader.next < reader.items.size()) {
      if (!reader.takesPosition()) {
        reader.readItem(reader.items.get(reader.next++));
      }
    }
    if (!reader.unnamed.isEmpty()) {
      reader.unnamed.report(reader.free());
    }
    Settings settings = new Settings(kind, reader.written, reader.unread);
    reader.faults.equals(reader.equals);
    reader.faults.missing(settings);
    reader.faults.idle(settings);
    return new Line(reader.title, settings, reader.clauses.read());
  }

  /** Takes a place between the loudspeakers that is said with a side. */
  private boolean takesPosition() {
    Optional<Setting> position = kind.setting(PanPosition.SETTING);
    Optional<PanPosition> found =
        position.isPresent() ? PanPosition.at(items, next) : Optional.empty();
    if (position.isEmpty() || found.isEmpty()) {
      return false;
    }
    found.get().report(report);
    unread.add(new Unread(found.get().span(), List.of(position.get())));
    next += found.get().size();
    return true;
  }

  private void readItem(Item item) {
    if (item instanceof Item.Word word) {
      readWord(word);
    } else if (item instanceof Item.Amount amount
        && !report.isFound(Fault.RANGE_WITH_DASH, amount.span())) {
      readPositional(amount);
    } else if (item instanceof Item.Range range) {
      readPositional(range);
    } else if (item instanceof Item.Text text) {
      if (takesTitle && title.isEmpty()) {
        title = text.text();
      } else {
        faults.strayText(text);
      }
    } else if (item instanceof Item.Mark mark) {
      take(mark);
    }
  }

  /** Keeps an equals sign; every other mark has been reported by the parser. */
  private void take(Item.Mark mark) {
    if (mark.text().equals("=")) {
      equals.add(mark);
    }
  }

  private void readWord(Item.Word word) {
    if (ClauseReader.isBegunBy(word.text())) {
      next = clauses.read(word, next);
      return;
    }
    Optional<Setting> setting = kind.setting(word.text());
    if (setting.isEmpty()) {
      setting = kind.settingOfWord(word.text());
      if (setting.isPresent()) {
        add(setting.get(), new Value.Word(word.text()), Optional.empty(), word.span());
      } else {
        readUnknown(word);
      }
    } else {
      readNamed(setting.get(), word);
    }
  }

  /** Reports a word that is no setting; what belongs to it is not judged a second time. */
  private void readUnknown(Item.Word word) {
    int taken = slips.report(items, next - 1, faults.known());
    if (taken > 0) {
      next += taken - 1;
      return;
    }
    Optional<Item.Mark> mark =
        next < items.size() && items.get(next) instanceof Item.Mark found
            ? Optional.of(found)
            : Optional.empty();
    Optional<Item.Mark> equals = mark.filter(found -> found.text().equals("="));
    boolean isGlued = report.isFound(Fault.MISSING_BLANK, word.span());
    int behind = mark.isPresent() ? next + 1 : next;
    Optional<SaidOtherwise> said =
        isGlued ? Optional.empty() : SaidOtherwise.of(kind, word.text(), report);
    if (said.isPresent() && said.get().isReported(items, next, behind, unnamed, unread)) {
      next = said.get().isBehind(items, behind) ? behind + 1 : next;
      return;
    }
    if (!isGlued && faults.unknown(word, equals)) {
      next = items.size();
      return;
    }
    next += mark.isPresent() ? 1 : 0;
    if (next < items.size()
        && (items.get(next) instanceof Item.Amount || items.get(next) instanceof Item.Range)) {
      next++;
    }
  }

  /** The settings that are not written yet and would do something. */
  private List<Setting> free() {
    Settings settings = new Settings(kind, written, unread);
    return kind.settings().stream().filter(settings::isFree).filter(settings::isInEffect).toList();
  }

  private void readNamed(Setting setting, Item.Word name) {
    Optional<TextSpan> nameSpan = Optional.of(name.span());
    if (setting.takes() instanceof Takes.Flag) {
      add(setting, new Value.Flag(), nameSpan, name.span());
      return;
    }
    if (next < items.size() && items.get(next) instanceof Item.Mark mark) {
      next++;
      take(mark);
    }
    if (next >= items.size()) {
      faults.noValue(setting, name.span());
      unread.add(new Unread(name.span(), List.of(setting)));
      return;
    }
    Item item = items.get(next);
    Optional<Value> value = Optional.empty();
    boolean isTaken = true;
    String title = "`" + setting.name() + "`";
    if (report.isFound(Fault.RANGE_WITH_DASH, item.span())) {
      isTaken = false;
    } else if (setting.takes() instanceof Takes.InUnit takes
        && item instanceof Item.Amount amount) {
      next++;
      isTaken = false;
      value = readOne(setting, takes, amount);
    } else if (setting.takes() instanceof Takes.InUnit takes && item instanceof Item.Range range) {
      value = readRange(takes, range, title);
    } else if (setting.takes() instanceof Takes.Quality && item instanceof Item.Amount amount) {
      value = amounts.readBare(amount, Dimension.QUALITY, setting).map(Value.Of::new);
    } else if (setting.takes() instanceof Takes.PlainNumber && item instanceof Item.Amount amount) {
      value = amounts.readBare(amount, Dimension.COUNT, setting).map(Value.Of::new);
    } else if (setting.takes() instanceof Takes.OneOf oneOf && item instanceof Item.Word word) {
      value = readOneOf(setting, oneOf, word.text(), word.span());
    } else if (setting.takes() instanceof Takes.OneOf oneOf && item instanceof Item.Amount amount) {
      value = readOneOf(setting, oneOf, report.text(amount.span()), amount.span());
    } else if (setting.takes() instanceof Takes.Name && item instanceof Item.Word word) {
      value = Optional.of(new Value.Reference(word.text()));
    } else {
      // A number in the place of a name was meant as its value, and is none of another setting.
      isTaken = setting.takes() instanceof Takes.Name && item instanceof Item.Amount;
      faults.noValue(setting, name.span());
    }
    if (isTaken) {
      next++;
    }
    addIfRead(setting, value, nameSpan, item.span());
  }

  private Optional<Value> readOneOf(
      Setting setting, Takes.OneOf oneOf, String word, TextSpan span) {
    if (oneOf.words().contains(word)) {
      return Optional.of(new Value.Word(word));
    }
    report.unknownWord(
        Fault.UNKNOWN_WORD,
        "`" + setting.name() + "` cannot be `" + word + "`",
        span,
        word,
        oneOf.words());
    return Optional.empty();
  }

  /** Reads an amount that has been taken, and what may follow it by mistake. */
  private Optional<Value> readOne(Setting setting, Takes.InUnit takes, Item.Amount amount) {
    if (takesSlopeInTwo(amount) || (amount.unit().isEmpty() && takesUnknownUnit(amount))) {
      return Optional.empty();
    }
    boolean isCutOff =
        takes.isSpan()
            && next < items.size()
            && items.get(next) instanceof Item.Word to
            && to.text().equals("to");
    if (isCutOff) {
      next++; // The unit of both ends may be meant to stand at the one that is missing.
      faults.noRange(setting, takes, amount, true);
      return Optional.empty();
    }
    if (amount.unit().isPresent() && faults.isForOtherStage(setting, takes, amount)) {
      return Optional.empty();
    }
    Optional<Quantity> quantity = amounts.read(amount, setting, takes.unit());
    if (!takes.isSpan()) {
      return quantity.map(Value.Of::new);
    }
    if (quantity.isPresent()) {
      faults.noRange(setting, takes, amount, false);
    }
    return Optional.empty();
  }

  /** Takes the word after a number that has no unit, if it can only be meant as one. */
  private boolean takesUnknownUnit(Item.Amount amount) {
    if (next < items.size()
        && items.get(next) instanceof Item.Word word
        && faults.isMeantAsUnit(word.text())) {
      next++;
      faults.unknownUnit(amount, word.text(), word.span());
      return true;
    }
    return false;
  }

  private Optional<Value> readRange(Takes.InUnit takes, Item.Range range, String title) {
    if (!takes.isSpan()) {
      faults.rangeUnexpected(range, title);
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
      Optional<Value> value = readRange(takes, range, "`" + setting.get().name() + "`");
      addIfRead(setting.get(), value, Optional.empty(), range.span());
      return;
    }
    Optional<String> unit = range.low().unit().or(() -> range.high().unit());
    Optional<Dimension> dimension = unit.flatMap(Unit::parse).map(Unit::dimension);
    Optional<Setting> single =
        kind.settings().stream()
            .filter(Setting::isPositional)
            .filter(one -> SettingFaults.dimension(one).equals(dimension))
            .filter(one -> dimension.isPresent())
            .findFirst();
    if (single.isPresent() && single.get().takes() instanceof Takes.InUnit takes) {
      readRange(takes, range, "`" + single.get().name() + "`");
    } else {
      faults.stray(range.span(), unit);
    }
    unread.add(new Unread(range.span(), single.stream().toList()));
  }

  /** Takes the words behind a slope's `dB` that are written as one unit with it. */
  private boolean takesSlopeInTwo(Item.Amount amount) {
    int words = SlopeWords.count(kind, amount, items, next);
    if (words > 0) {
      next += words;
      unread.add(SlopeWords.report(kind, amount, items.get(next - 1), report));
    }
    return words > 0;
  }

  private void readPositional(Item.Amount amount) {
    if (takesSlopeInTwo(amount)) {
      return;
    }
    Optional<Dimension> dimension = Readings.dimension(amount);
    if (dimension.isEmpty()) {
      boolean isInUnknownUnit = amount.unit().isPresent() || takesUnknownUnit(amount);
      amount.unit().ifPresent(unit -> faults.unknownUnit(amount, unit, amount.unitSpan()));
      if (isInUnknownUnit || report.isTroubled(amount.span())) {
        unread.add(new Unread(amount.span(), isInUnknownUnit ? faults.positional() : List.of()));
      } else {
        unnamed.add(amount);
      }
      return;
    }
    for (Setting setting : kind.settings()) {
      if (setting.isPositional()
          && setting.takes() instanceof Takes.InUnit takes
          && takes.unit().dimension() == dimension.get()) {
        addIfRead(setting, readOne(setting, takes, amount), Optional.empty(), amount.span());
        return;
      }
    }
    Optional<Setting> quality = qualityOfWidth();
    if (dimension.get() == Dimension.BANDWIDTH && quality.isPresent()) {
      Optional<Value> value =
          amounts
              .read(amount, Unit.OCTAVE, "the width")
              .map(octaves -> QualityFactor.ofBandwidth(new Bandwidth(octaves.baseValue())))
              .map(Value.Of::new);
      addIfRead(quality.get(), value, Optional.empty(), amount.span());
      return;
    }
    unnamed.add(amount);
  }

  /** The Q that is the centre divided by a width, and so may be written as that width. */
  private Optional<Setting> qualityOfWidth() {
    return kind.setting("centre").isPresent()
        ? kind.setting("Q").filter(setting -> setting.takes() instanceof Takes.Quality)
        : Optional.empty();
  }

  /** Adds what is written for a setting, or that it could not be read. */
  private void addIfRead(
      Setting setting, Optional<Value> value, Optional<TextSpan> nameSpan, TextSpan valueSpan) {
    if (value.isPresent()) {
      add(setting, value.get(), nameSpan, valueSpan);
    } else {
      TextSpan span = nameSpan.map(name -> name.union(valueSpan)).orElse(valueSpan);
      unread.add(new Unread(span, List.of(setting)));
    }
  }

  private void add(Setting setting, Value value, Optional<TextSpan> nameSpan, TextSpan valueSpan) {
    TextSpan span = nameSpan.isPresent() ? nameSpan.get().union(valueSpan) : valueSpan;
    clauses.takeMisplaced().ifPresent(faults::misplacedMark);
    for (Written one : written) {
      Setting there = one.setting();
      if (there.name().equals(setting.name()) || there.saysTheSameAs(setting)) {
        faults.writtenTwice(setting, there, span);
        return;
      }
    }
    written.add(new Written(setting, value, nameSpan, valueSpan));
  }
}
