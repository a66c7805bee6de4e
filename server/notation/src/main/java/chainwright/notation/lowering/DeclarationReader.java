package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Declarations.Listen;
import chainwright.notation.model.Declarations.LowestNote;
import chainwright.notation.model.Declarations.Route;
import chainwright.notation.model.Declarations.Send;
import chainwright.notation.model.Declarations.Source;
import chainwright.notation.model.Declarations.Spill;
import chainwright.notation.model.Declarations.Take;
import chainwright.notation.model.Declarations.Target;
import chainwright.notation.model.Name;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.Level;
import chainwright.quantity.Quantity;
import chainwright.quantity.TimeSpan;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Reads the declarations of a chain, a bus or a preset, one statement at a time. */
final class DeclarationReader {

  private static final List<String> INTENTS = List.of("natural", "dense", "aggressive");

  private final Catalogue catalogue;
  private final Report report;
  private Optional<Source> source = Optional.empty();
  private final List<Spill> spills = new ArrayList<>();
  private Optional<Take> take = Optional.empty();
  private Optional<LowestNote> lowestNote = Optional.empty();
  private Optional<Name> group = Optional.empty();
  private Optional<Name> intent = Optional.empty();
  private final List<Route> routes = new ArrayList<>();
  private final List<Send> sends = new ArrayList<>();
  private Optional<Target> maxTruePeak = Optional.empty();
  private Optional<Target> loudness = Optional.empty();
  private final List<Listen> listens = new ArrayList<>();

  DeclarationReader(Catalogue catalogue, Report report) {
    this.catalogue = catalogue;
    this.report = report;
  }

  static boolean isDeclaration(String word) {
    return Vocabulary.find(word)
        .filter(keyword -> keyword.place() == Vocabulary.Place.DECLARATION)
        .isPresent();
  }

  Declarations declarations() {
    return new Declarations(
        source,
        spills,
        take,
        lowestNote,
        group,
        intent,
        routes,
        sends,
        maxTruePeak,
        loudness,
        listens);
  }

  void read(Statement statement) {
    ItemCursor cursor = new ItemCursor(statement, report, this::beginsStatement);
    switch (cursor.head()) {
      case "source" -> source = once(cursor, source, this::readSource);
      case "spill" -> readSpill(cursor);
      case "take" -> take = once(cursor, take, this::readTake);
      case "lowest-note" -> lowestNote = once(cursor, lowestNote, this::readLowestNote);
      case "group" -> group = once(cursor, group, one -> one.name("the name of a group"));
      case "intent" -> intent = once(cursor, intent, one -> readIntent(one, report));
      case "to" -> readRoute(cursor).ifPresent(routes::add);
      case "send" -> readSend(cursor).ifPresent(sends::add);
      case "max-true-peak" ->
          maxTruePeak = once(cursor, maxTruePeak, one -> readTarget(one, Unit.DBTP));
      case "loudness" -> loudness = once(cursor, loudness, one -> readTarget(one, Unit.LUFS));
      case "listen" -> readListen(cursor).ifPresent(listens::add);
      default -> throw new IllegalArgumentException("no declaration: " + cursor.head());
    }
    cursor.end();
  }

  private boolean beginsStatement(String word) {
    return isDeclaration(word) || StepReader.isStep(word, catalogue);
  }

  private <T> Optional<T> once(
      ItemCursor cursor, Optional<T> before, Function<ItemCursor, Optional<T>> read) {
    Optional<T> now = read.apply(cursor);
    if (before.isPresent()) {
      report.add(
          Fault.DECLARED_TWICE,
          cursor.lineSpan(),
          "`" + cursor.head() + "` is declared twice",
          "The first one holds.",
          "Remove one of them.",
          report.fix("Remove this one", true, report.removal(cursor.lineSpan())));
      return before;
    }
    return now;
  }

  private Optional<Source> readSource(ItemCursor cursor) {
    Optional<Name> name = cursor.name("a kind of source, such as `lead-vocal`");
    if (name.isEmpty()) {
      return Optional.empty();
    }
    Optional<SourceKind> kind = catalogue.source(name.get().text());
    if (kind.isPresent() && !cursor.isAtWord()) {
      return Optional.of(new Source(kind.get(), name.get().span()));
    }
    List<String> kinds = catalogue.sources().stream().map(SourceKind::word).toList();
    Optional<Name> joined =
        cursor.joined(words -> kinds.contains(words) || SourceWords.isSaid(words));
    if (joined.isPresent() || kind.isEmpty()) {
      String word = joined.orElse(name.get()).text();
      TextSpan span = joined.orElse(name.get()).span();
      report.unknownWord(
          Fault.UNKNOWN_SOURCE,
          "`" + report.text(span) + "` is no known kind of source",
          span,
          kinds.contains(word) ? List.of(word) : SourceWords.meant(word, kinds),
          "It is one of " + SourceKind.inWords(catalogue.sources()) + ".");
      return Optional.empty();
    }
    return kind.map(found -> new Source(found, name.get().span()));
  }

  private void readSpill(ItemCursor cursor) {
    List<Name> names = new ArrayList<>();
    cursor.name("a kind of source or the name of a chain").ifPresent(names::add);
    while (cursor.isAtWord()) {
      cursor.name("another one").ifPresent(names::add);
    }
    Optional<Decibels> level =
        cursor.isAtAmount()
            ? cursor.amount(Unit.DECIBEL, "the level of the spill").map(DeclarationReader::decibels)
            : Optional.empty();
    names.forEach(name -> spills.add(new Spill(name, level, cursor.lineSpan())));
  }

  private Optional<Take> readTake(ItemCursor cursor) {
    return cursor
        .text(true)
        .map(
            text -> {
              Optional<Quantity[]> passage = cursor.range(Unit.SECOND);
              return new Take(
                  text.text(),
                  text.span(),
                  passage.map(ends -> time(ends[0])),
                  passage.map(ends -> time(ends[1])));
            });
  }

  private Optional<LowestNote> readLowestNote(ItemCursor cursor) {
    if (cursor.isAtAmount()) {
      return cursor
          .amount(Unit.HERTZ, "`lowest-note`")
          .map(
              value ->
                  new LowestNote(
                      Frequency.ofHertz(value.baseValue()), value.toString(), cursor.lastSpan()));
    }
    Optional<Name> name = cursor.name("a note such as `A2`, or a frequency such as `110 Hz`");
    if (name.isEmpty()) {
      return Optional.empty();
    }
    Optional<Frequency> frequency = NoteName.frequency(name.get().text());
    if (frequency.isEmpty()) {
      reportNote(name.get());
    }
    return frequency.map(hertz -> new LowestNote(hertz, name.get().text(), name.get().span()));
  }

  private void reportNote(Name name) {
    TextSpan sharp = report.unbroken(name.span().start());
    Optional<String> flat = NoteName.flat(report.text(sharp));
    report.add(
        Fault.UNKNOWN_NOTE,
        name.span(),
        "`" + name.text() + "` is no note",
        flat.isPresent() ? "`#` begins a comment, so the sharp was never read." : "",
        flat.map(one -> "Write the flat of the same pitch: `" + one + "`.")
            .orElse(
                "Write a letter from A to G, `b` if it is flat, and the octave: `Bb1`;"
                    + " C4 is middle C."),
        flat.map(
                one ->
                    List.of(report.change("Write `" + one + "`", true, new TextEdit(sharp, one))))
            .orElse(List.of()));
  }

  /** Reads what a chain or a session is meant to sound like. */
  static Optional<Name> readIntent(ItemCursor cursor, Report report) {
    Optional<Name> name = cursor.name("one of " + String.join(", ", INTENTS));
    if (name.isPresent() && !INTENTS.contains(name.get().text())) {
      report.unknownWord(
          Fault.UNKNOWN_WORD,
          "`intent` cannot be `" + name.get().text() + "`",
          name.get().span(),
          name.get().text(),
          INTENTS);
      return Optional.empty();
    }
    return name;
  }

  private Optional<Route> readRoute(ItemCursor cursor) {
    Optional<Name> bus = cursor.name("the name of a bus");
    Decibels fader =
        cursor.takesWord("fader")
            ? cursor
                .amount(Unit.DECIBEL, "`fader`")
                .map(DeclarationReader::decibels)
                .orElse(new Decibels(0))
            : new Decibels(0);
    return bus.map(name -> new Route(name, fader, cursor.lineSpan()));
  }

  private Optional<Send> readSend(ItemCursor cursor) {
    Optional<Name> bus = cursor.name("the name of a bus");
    if (bus.isEmpty()) {
      return Optional.empty();
    }
    Optional<Decibels> level =
        cursor.amount(Unit.DECIBEL, "the level of the send").map(DeclarationReader::decibels);
    boolean isPreFader = cursor.takesWord("pre-fader");
    if (!isPreFader) {
      cursor.takesWord("post-fader");
    }
    return level.map(gain -> new Send(bus.get(), gain, isPreFader, cursor.lineSpan()));
  }

  private Optional<Target> readTarget(ItemCursor cursor, Unit unit) {
    return cursor
        .amount(unit, "`" + cursor.head() + "`")
        .map(value -> new Target((Level) value, cursor.lastSpan()));
  }

  private Optional<Listen> readListen(ItemCursor cursor) {
    TextSpan span = cursor.lineSpan();
    if (cursor.isAtAmount()) {
      Optional<TimeSpan> at = cursor.amount(Unit.SECOND, "`listen`").map(DeclarationReader::time);
      String cue = cursor.text(true).map(text -> text.text()).orElse("");
      return at.map(from -> new Listen(from, Optional.empty(), cue, span));
    }
    Optional<Quantity[]> passage = cursor.range(Unit.SECOND);
    if (passage.isEmpty()) {
      cursor.amount(Unit.SECOND, "`listen`");
      return Optional.empty();
    }
    String cue = cursor.text(true).map(text -> text.text()).orElse("");
    return passage.map(ends -> new Listen(time(ends[0]), Optional.of(time(ends[1])), cue, span));
  }

  private static Decibels decibels(Quantity quantity) {
    return new Decibels(quantity.baseValue());
  }

  private static TimeSpan time(Quantity quantity) {
    return new TimeSpan(quantity.baseValue());
  }
}
