package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.model.Note;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Level;
import chainwright.quantity.Quantity;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a session. */
final class SessionReader {

  private static final List<String> KNOWN =
      Stream.concat(
              Vocabulary.at(Vocabulary.Place.SESSION).stream().map(Vocabulary.Keyword::text),
              Stream.of("intent"))
          .toList();

  private static final List<String> LISTENERS = List.of("adults", "minors");

  private final Report report;
  private Optional<SampleRate> sampleRate = Optional.empty();
  private Optional<Level> alignment = Optional.empty();
  private Optional<Double> mainsHz = Optional.empty();
  private Optional<Double> tempoBpm = Optional.empty();
  private Optional<String> listeners = Optional.empty();
  private Optional<Name> intent = Optional.empty();

  SessionReader(Report report) {
    this.report = report;
  }

  Definition.Session read(Group group, Section section) {
    ItemCursor cursor = new ItemCursor(group.statement(), report);
    String title = cursor.text(false).map(Item.Text::text).orElse("");
    cursor.end();
    List<Note> notes = new ArrayList<>();
    Optional<Block> block = group.statement().block();
    if (block.isEmpty()) {
      report.noBlock(group.statement(), "session");
    } else {
      Group.Grouped grouped = Group.of(block.get(), report);
      notes.addAll(grouped.own());
      for (Group inner : grouped.groups()) {
        readLine(inner.statement());
        notes.addAll(inner.notes());
      }
    }
    notes.addAll(group.notes());
    return new Definition.Session(
        title,
        sampleRate,
        alignment,
        mainsHz,
        tempoBpm,
        listeners,
        intent,
        notes,
        section,
        group.statement().lineSpan(),
        group.statement().span());
  }

  private void readLine(Statement statement) {
    Optional<Item.Word> head = statement.head();
    if (head.isEmpty()) {
      return;
    }
    ItemCursor cursor = new ItemCursor(statement, report, KNOWN::contains);
    switch (head.get().text()) {
      case "sample-rate" -> readSampleRate(cursor);
      case "alignment" -> readAlignment(cursor);
      case "mains" -> mainsHz = cursor.amount(Unit.HERTZ, "`mains`").map(Quantity::baseValue);
      case "tempo" ->
          tempoBpm = cursor.amount(Unit.BEATS_PER_MINUTE, "`tempo`").map(Quantity::baseValue);
      case "listeners" -> readListeners(cursor);
      case "intent" -> intent = DeclarationReader.readIntent(cursor, report);
      default -> {
        List<Item> items = new ArrayList<>(statement.items());
        items.add(0, head.get());
        Optional<JoinedWords> joined = JoinedWords.at(items, 0, KNOWN::contains);
        TextSpan span = joined.map(JoinedWords::span).orElse(head.get().span());
        report.unknownWord(
            Fault.UNKNOWN_WORD,
            "a session says nothing about `" + report.text(span) + "`",
            span,
            joined.map(JoinedWords::text).orElse(head.get().text()),
            KNOWN);
        return;
      }
    }
    cursor.end();
  }

  private void readSampleRate(ItemCursor cursor) {
    Optional<Quantity> rate = cursor.amount(Unit.HERTZ, "`sample-rate`", SessionReader::isRate);
    if (rate.isEmpty()) {
      return;
    }
    double hertz = rate.get().baseValue();
    if (!isRate(hertz)) {
      report.add(
          Fault.OUTSIDE_LIMITS,
          cursor.lastSpan(),
          "a sample rate lies between 8 kHz and 384 kHz, but this is " + rate.get(),
          "",
          "Write the rate of the recordings, such as `48 kHz`.",
          isInKilohertz(hertz)
              ? List.of(
                  report.change(
                      "Write `" + AmountReader.spell(hertz) + " kHz`",
                      true,
                      new TextEdit(cursor.lastSpan(), AmountReader.spell(hertz) + " kHz")))
              : List.of());
      return;
    }
    double whole = Math.rint(hertz);
    if (hertz != whole) {
      String spelt = AmountReader.spell(whole / 1000) + " kHz";
      report.add(
          Fault.OUTSIDE_LIMITS,
          cursor.lastSpan(),
          "a sample rate is a whole number of hertz, but this is "
              + AmountReader.spell(hertz)
              + " Hz",
          "",
          "Write `" + spelt + "`, or the rate of the recordings.",
          List.of(
              report.change(
                  "Write `" + spelt + "`", true, new TextEdit(cursor.lastSpan(), spelt))));
      return;
    }
    sampleRate = Optional.of(SampleRate.ofHertz(whole));
  }

  /** Whether a rate is possible if the number was meant in kHz. */
  private static boolean isInKilohertz(double hertz) {
    return isRate(Unit.KILOHERTZ.toBase(hertz));
  }

  private static boolean isRate(double hertz) {
    return hertz >= SampleRate.LOWEST_HZ && hertz <= SampleRate.HIGHEST_HZ;
  }

  private boolean reportSwapped(List<Item> rest) {
    boolean isSwapped =
        rest.size() == 3
            && rest.get(0) instanceof Item.Amount first
            && first.unit().flatMap(Unit::parse).filter(Unit.DBFS::equals).isPresent()
            && rest.get(1) instanceof Item.Mark
            && rest.get(2) instanceof Item.Amount last
            && last.unit().flatMap(Unit::parse).filter(Unit.DBU::equals).isPresent();
    if (isSwapped) {
      TextSpan digital = rest.get(0).span();
      TextSpan analogue = rest.get(2).span();
      String mended = report.text(analogue) + " = " + report.text(digital);
      report.add(
          Fault.WRONG_UNIT,
          digital.union(analogue),
          "`alignment` names the analogue level first, then the digital one",
          "",
          "Write `" + mended + "`.",
          report.change(
              "Write `" + mended + "`", true, new TextEdit(digital.union(analogue), mended)));
    }
    return isSwapped;
  }

  private void readAlignment(ItemCursor cursor) {
    if (reportSwapped(cursor.rest())) {
      cursor.skip();
      return;
    }
    Optional<Quantity> analogue = cursor.amount(Unit.DBU, "`alignment`");
    boolean isEquated = cursor.takesMark("=");
    if (!isEquated) {
      if (analogue.isEmpty()) {
        return;
      }
      report.add(
          Fault.VALUE_MISSING,
          cursor.lineSpan(),
          "`alignment` says which digital level an analogue level stands for",
          "",
          "Write for example `alignment 0 dBu = -18 dBFS`.");
      return;
    }
    Optional<Quantity> digital = cursor.amount(Unit.DBFS, "`alignment`");
    if (analogue.isPresent() && digital.isPresent()) {
      alignment = Optional.of(Level.ofDbfs(digital.get().baseValue() - analogue.get().baseValue()));
    }
  }

  private void readListeners(ItemCursor cursor) {
    Optional<Name> name = cursor.name("`adults` or `minors`");
    if (name.isPresent() && !LISTENERS.contains(name.get().text())) {
      report.unknownWord(
          Fault.UNKNOWN_WORD,
          "`listeners` cannot be `" + name.get().text() + "`",
          name.get().span(),
          name.get().text(),
          LISTENERS);
      return;
    }
    listeners = name.map(Name::text);
  }
}
