package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.lowering.NoteName;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Item;
import chainwright.quantity.NumberText;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Proposes what follows the first word of a session's facts and of declarations.
 *
 * @param catalogue the trade's knowledge
 * @param scope what the names mean
 * @param line the line
 */
record DeclarationProposals(Catalogue catalogue, Scope scope, WrittenLine line) {

  private static final double HIGHEST_HZ = 20_000;
  private static final double LONGEST_SECONDS = 86_400;
  private static final double SEMITONE = Math.pow(2, 1.0 / 12);
  private static final int SEMITONES_IN_TWO_OCTAVES = 24;

  /** What follows a first word; empty if it is none of a declaration. */
  Optional<List<Proposal>> of(String head) {
    return switch (head) {
      case "sample-rate" ->
          Optional.of(
              amount(
                  plain("sample-rate", Unit.HERTZ, 8000, 384_000, "48 kHz where nothing is said."),
                  0,
                  48_000,
                  44_100,
                  88_200,
                  96_000,
                  176_400,
                  192_000));
      case "alignment" -> Optional.of(alignment());
      case "mains" -> Optional.of(amount("hum-removal", "mains", 0));
      case "tempo" ->
          Optional.of(
              amount(plain("tempo", Unit.BEATS_PER_MINUTE, 1, 1000, "Crotchets in a minute."), 0));
      case "listeners" ->
          Optional.of(
              atFirst(
                  word("adults", "most listeners"),
                  word("minors", "lower limits of listening levels")));
      case "intent" ->
          Optional.of(
              atFirst(
                  word("natural", "as the source sounds"),
                  word("dense", "more is usual than in `natural`"),
                  word("aggressive", "much is usual")));
      case "source" -> Optional.of(isAlone() ? sources() : List.of());
      case "spill" -> Optional.of(spill());
      case "lowest-note" -> Optional.of(lowestNote());
      case "group" -> Optional.of(isAlone() ? names().groups() : List.of());
      case "to" -> Optional.of(route());
      case "send" -> Optional.of(send());
      case "max-true-peak" -> Optional.of(amount("true-peak-limiter", "ceiling", 0));
      case "loudness" -> Optional.of(amount(loudness(), 0, -23, -16));
      case "take" -> Optional.of(passage(1));
      case "listen", "during" -> Optional.of(passage(0));
      default -> Optional.empty();
    };
  }

  private boolean isFirst() {
    return line.before().isEmpty();
  }

  /** Whether nothing but the word at the caret follows the first word. */
  private boolean isAlone() {
    return isFirst() && line.after().isEmpty();
  }

  /** Whether the name at the caret is the only one, whatever follows it. */
  private boolean isOnlyName(String next) {
    return isFirst()
        && line.after().stream()
            .limit(1)
            .allMatch(item -> !(item instanceof Item.Word word) || word.text().equals(next));
  }

  private NameProposals names() {
    return new NameProposals(scope, line.around().owner());
  }

  private Optional<SourceKind> source() {
    return line.around().source().flatMap(catalogue::source);
  }

  private List<Proposal> atFirst(Proposal... proposals) {
    return isAlone() ? List.of(proposals) : List.of();
  }

  private static Proposal word(String text, String detail) {
    return Proposal.of(text, Proposal.Kind.VALUE, detail);
  }

  private List<Proposal> amount(Setting setting, int item, double... examples) {
    return amount(line.head(), setting, item, examples);
  }

  private List<Proposal> amount(String stage, String name, int item) {
    return amount(stage, setting(stage, name), item);
  }

  /** A value as the item of a number, counted from 0, and its unit behind its number. */
  private List<Proposal> amount(String stage, Setting setting, int item, double... examples) {
    ValueProposals values =
        new ValueProposals(
            stage,
            setting,
            java.util.Arrays.stream(examples).boxed().toList(),
            source(),
            RangeRow.Direction.ANY,
            scope.sampleRate());
    int written = line.before().size();
    if (written == item && !isFollowedByValue()) {
      return values.values(line);
    }
    boolean isAtUnit = written == item + 1 && line.bareNumber().isPresent();
    return isAtUnit ? values.unitsOf(line.bareNumber().get()) : List.of();
  }

  private boolean isFollowedByValue() {
    return !line.after().isEmpty() && !(line.after().get(0) instanceof Item.Word);
  }

  private Setting setting(String stage, String name) {
    return catalogue.stage(stage).flatMap(kind -> kind.setting(name)).orElseThrow();
  }

  /** A quantity of a declaration, which the catalogue of stages does not know. */
  private static Setting plain(String name, Unit unit, double low, double high, String says) {
    return new Setting(
        name,
        new Takes.InUnit(unit, false),
        true,
        says,
        new Limit.Fixed(low),
        new Limit.Fixed(high),
        new Default.Absent(),
        List.of(),
        List.of(),
        Optional.empty());
  }

  private Setting loudness() {
    String asked = "The integrated loudness at the end; checked, changes nothing. For -23 LUFS: ";
    return plain("loudness", Unit.LUFS, -70, 0, asked + citation("R128") + ".");
  }

  private String citation(String key) {
    return catalogue.citation(key).map(Citation::spelt).orElseThrow();
  }

  private List<Proposal> alignment() {
    List<Item> before = line.before();
    Proposal european =
        Proposal.of(
            "-18 dBFS", Proposal.Kind.VALUE, "alignment", "Source: " + citation("R68") + ".");
    Proposal american =
        Proposal.of(
            "-20 dBFS", Proposal.Kind.VALUE, "alignment", "Source: " + citation("RP155") + ".");
    Setting analogue = plain("alignment", Unit.DBU, -40, 30, "The analogue level.");
    Setting digital =
        plain("alignment", Unit.DBFS, -60, 0, "The digital level that it stands for.");
    boolean isEquated = before.size() > 1 && before.get(1) instanceof Item.Mark;
    if (isEquated && !line.after().isEmpty()) {
      return List.of();
    }
    if (isEquated) {
      boolean isAtLevel = before.size() == 2 && !line.isNumber();
      return isAtLevel ? List.of(european, american) : amount(digital, 2, -18, -20);
    }
    if (before.size() == 1 && line.bareNumber().isEmpty()) {
      return line.isAtEnd()
          ? List.of(
              european.withText("= -18 dBFS").withFilter("= -18 dBFS"),
              american.withText("= -20 dBFS").withFilter("= -20 dBFS"))
          : List.of();
    }
    if (before.isEmpty() && !line.isNumber() && line.isAtEnd()) {
      return List.of(
          european.withText("0 dBu = -18 dBFS").withFilter("0 dBu = -18 dBFS"),
          american.withText("0 dBu = -20 dBFS").withFilter("0 dBu = -20 dBFS"));
    }
    return amount(analogue, 0);
  }

  private List<Proposal> sources() {
    return catalogue.sources().stream()
        .map(kind -> Proposal.of(kind.word(), Proposal.Kind.NAME, kind.title(), kind.note()))
        .toList();
  }

  private List<Proposal> spill() {
    boolean isNamed = line.before().stream().allMatch(Item.Word.class::isInstance);
    List<String> named =
        Stream.concat(line.before().stream(), line.after().stream())
            .filter(Item.Word.class::isInstance)
            .map(item -> ((Item.Word) item).text())
            .toList();
    List<Proposal> proposals = new ArrayList<>();
    if (isNamed && !line.isNumber()) {
      Stream.concat(names().tracks().stream(), sources().stream())
          .filter(proposal -> !named.contains(proposal.text()))
          .forEach(proposals::add);
    }
    if (!isFirst()) {
      Setting level =
          plain(
              "spill",
              Unit.DECIBEL,
              -120,
              0,
              "How much softer it is than the wanted sound; measure it, nobody can know it.");
      int at = line.bareNumber().isPresent() ? line.before().size() - 1 : line.before().size();
      boolean isDone = !isNamed && line.bareNumber().isEmpty();
      proposals.addAll(isDone ? List.of() : amount(level, at));
    }
    return proposals;
  }

  private List<Proposal> lowestNote() {
    if (!line.after().isEmpty()) {
      return List.of();
    }
    return isFirst() && !line.isNumber()
        ? notes()
        : amount(plain("lowest-note", Unit.HERTZ, 1, HIGHEST_HZ, "The lowest fundamental."), 0);
  }

  /** The source's lowest note, then those of the two octaves around it. */
  private List<Proposal> notes() {
    double usual =
        source()
            .flatMap(kind -> boxed(kind))
            .orElse(NoteName.frequency("E2").orElseThrow().hertz());
    List<Proposal> notes = new ArrayList<>();
    source()
        .filter(kind -> !kind.lowestNote().isEmpty())
        .ifPresent(
            kind -> notes.add(note(kind.lowestNote(), "usual lowest note of " + kind.word())));
    IntStream.rangeClosed(-SEMITONES_IN_TWO_OCTAVES / 2, SEMITONES_IN_TWO_OCTAVES / 2)
        .mapToObj(step -> NoteName.nearest(usual * Math.pow(SEMITONE, step)))
        // A sharp cannot be written, since its sign begins a comment.
        .map(name -> NoteName.flat(name).orElse(name))
        .filter(name -> notes.stream().noneMatch(one -> one.text().equals(name)))
        .map(name -> note(name, "lowest note"))
        .toList()
        .forEach(notes::add);
    return notes;
  }

  private static Optional<Double> boxed(SourceKind kind) {
    return kind.lowestHz().isPresent()
        ? Optional.of(kind.lowestHz().getAsDouble())
        : Optional.empty();
  }

  private static Proposal note(String name, String detail) {
    String hertz =
        NoteName.frequency(name).map(found -> NumberText.format(found.hertz(), 1)).orElse("");
    return Proposal.of(name, Proposal.Kind.VALUE, detail + ", " + hertz + " Hz");
  }

  private List<Proposal> route() {
    if (isFirst()) {
      return isOnlyName("fader") ? names().buses() : List.of();
    }
    if (line.before().size() == 1) {
      return line.isNumber() || !line.after().isEmpty()
          ? List.of()
          : List.of(
              Proposal.of(
                  "fader",
                  Proposal.Kind.SETTING,
                  "default: 0 dB",
                  "The gain on the way to the bus."));
    }
    Setting fader =
        plain(
            "fader",
            Unit.DECIBEL,
            -96,
            24,
            "The gain on the way to the bus; 0 dB changes nothing.");
    return amount(fader, 2, 0);
  }

  private List<Proposal> send() {
    if (isFirst()) {
      return isOnlyName("") ? names().buses() : List.of();
    }
    boolean isLevelWritten =
        line.before().size() == 2
            && line.bareNumber().isEmpty()
            && line.before().get(1) instanceof Item.Amount;
    if (isLevelWritten) {
      return line.after().isEmpty() && !line.isNumber()
          ? new ValueProposals(
                  "send",
                  setting("send", "tap"),
                  List.of(),
                  source(),
                  RangeRow.Direction.ANY,
                  scope.sampleRate())
              .values(line)
          : List.of();
    }
    return amount("send", "level", 1);
  }

  /** From when to when: the word between, and the unit of a bare number. */
  private List<Proposal> passage(int item) {
    Setting time =
        new Setting(
            "time",
            new Takes.InUnit(Unit.SECOND, true),
            true,
            "Counted from the first sample of the recording.",
            new Limit.Fixed(0),
            new Limit.Fixed(LONGEST_SECONDS),
            new Default.Absent(),
            List.of(),
            List.of(),
            Optional.empty());
    ValueProposals values =
        new ValueProposals(
            line.head(),
            time,
            List.of(),
            Optional.empty(),
            RangeRow.Direction.ANY,
            scope.sampleRate());
    List<Item> before = line.before();
    if (before.size() != item + 1) {
      return List.of();
    }
    if (before.get(item) instanceof Item.Range range && isBare(range.high())) {
      return values.unitsOf(range);
    }
    if (before.get(item) instanceof Item.Amount amount
        && !line.isNumber()
        && !isFollowedByValue()) {
      List<Proposal> more = new ArrayList<>(values.upperEnds(amount, false));
      more.addAll(isBare(amount) ? values.unitsOf(amount) : List.of());
      return more;
    }
    return List.of();
  }

  private static boolean isBare(Item.Amount amount) {
    return StageLine.dimension(amount).isEmpty();
  }
}
