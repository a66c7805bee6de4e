package chainwright.notation.lowering;

import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.model.Note;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.quantity.Level;
import chainwright.quantity.Quantity;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a session. */
final class SessionReader {

  private static final List<String> LISTENERS = List.of("adults", "minors");

  private final Report report;
  private Optional<SampleRate> sampleRate = Optional.empty();
  private Optional<Level> alignment = Optional.empty();
  private Optional<Double> mainsHz = Optional.empty();
  private Optional<Double> tempoBpm = Optional.empty();
  private Optional<String> listeners = Optional.empty();

  SessionReader(Report report) {
    this.report = report;
  }

  Definition.Session read(Group group, Section section) {
    ItemCursor cursor = new ItemCursor(group.statement(), report);
    String title = cursor.text(false).map(Item.Text::text).orElse("");
    cursor.end();
    List<Note> notes = new ArrayList<>();
    Optional<Block> block = group.statement().block();
    if (block.isPresent()) {
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
    ItemCursor cursor = new ItemCursor(statement, report);
    switch (head.get().text()) {
      case "sample-rate" -> readSampleRate(cursor);
      case "alignment" -> readAlignment(cursor);
      case "mains" -> mainsHz = cursor.amount(Unit.HERTZ, "`mains`").map(Quantity::baseValue);
      case "tempo" ->
          tempoBpm = cursor.amount(Unit.BEATS_PER_MINUTE, "`tempo`").map(Quantity::baseValue);
      case "listeners" -> readListeners(cursor);
      default -> {
        List<String> known =
            Vocabulary.at(Vocabulary.Place.SESSION).stream().map(Vocabulary.Keyword::text).toList();
        report.unknownWord(
            "unknown-word",
            "a session says nothing about `" + head.get().text() + "`",
            head.get().span(),
            head.get().text(),
            known);
        return;
      }
    }
    cursor.end();
  }

  private void readSampleRate(ItemCursor cursor) {
    Optional<Quantity> rate = cursor.amount(Unit.HERTZ, "`sample-rate`");
    if (rate.isEmpty()) {
      return;
    }
    double hertz = rate.get().baseValue();
    if (hertz < SampleRate.LOWEST_HZ || hertz > SampleRate.HIGHEST_HZ) {
      report.error(
          "outside-limits",
          cursor.lastSpan(),
          "a sample rate lies between 8 kHz and 384 kHz, but this is " + rate.get(),
          "",
          "Write the rate of the recordings, such as `48 kHz`.");
      return;
    }
    sampleRate = Optional.of(SampleRate.ofHertz(hertz));
  }

  private void readAlignment(ItemCursor cursor) {
    Optional<Quantity> analogue = cursor.amount(Unit.DBU, "`alignment`");
    boolean isEquated = cursor.takesMark("=");
    if (analogue.isEmpty()) {
      return;
    }
    if (!isEquated) {
      report.error(
          "value-missing",
          cursor.lineSpan(),
          "`alignment` says which digital level an analogue level stands for",
          "",
          "Write for example `alignment 0 dBu = -18 dBFS`.");
      return;
    }
    alignment =
        cursor
            .amount(Unit.DBFS, "`alignment`")
            .map(digital -> Level.ofDbfs(digital.baseValue() - analogue.get().baseValue()));
  }

  private void readListeners(ItemCursor cursor) {
    Optional<Name> name = cursor.name("`adults` or `minors`");
    if (name.isPresent() && !LISTENERS.contains(name.get().text())) {
      report.unknownWord(
          "unknown-word",
          "`listeners` cannot be `" + name.get().text() + "`",
          name.get().span(),
          name.get().text(),
          LISTENERS);
      return;
    }
    listeners = name.map(Name::text);
  }
}
