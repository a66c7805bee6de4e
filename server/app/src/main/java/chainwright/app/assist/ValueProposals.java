package chainwright.app.assist;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.TradeRange.Verdict;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.syntax.Item;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Proposes the values of one setting, and the units of its numbers.
 *
 * @param stage the word of the stage that takes the setting
 * @param setting the setting
 * @param examples values to propose beside those of the catalogue, in the setting's unit
 * @param source the kind of source, if it is declared
 * @param direction the sign of the stage's gain
 * @param rate the sample rate that it runs at
 */
record ValueProposals(
    String stage,
    Setting setting,
    List<Double> examples,
    Optional<SourceKind> source,
    RangeRow.Direction direction,
    SampleRate rate) {

  ValueProposals {
    examples = List.copyOf(examples);
  }

  /** What could be written as the value, the usual ones first. */
  List<Proposal> values(WrittenLine line) {
    if (setting.takes() instanceof Takes.OneOf oneOf) {
      return oneOf.words().stream().map(this::word).toList();
    }
    return line.isNumber() ? begunWith(line.prefix()) : all().toList();
  }

  private Stream<Proposal> all() {
    RangeText text = new RangeText(stage, setting, source, direction);
    if (StageLine.isSpan(setting)) {
      return spans().stream()
          .filter(ends -> isPossible(ends.get(0)) && isPossible(ends.get(1)))
          .map(
              ends ->
                  text.proposal(ValueText.range(setting, ends.get(0), ends.get(1)), ends.get(0)));
    }
    return numbers().stream()
        .filter(this::isPossible)
        .map(number -> text.proposal(ValueText.of(setting, number), number));
  }

  private Proposal word(String word) {
    boolean isDefault =
        setting.byOmission() instanceof Default.Word byDefault && byDefault.word().equals(word);
    return Proposal.of(
        word,
        Proposal.Kind.VALUE,
        setting.name() + (isDefault ? ", the default" : ""),
        setting.says());
  }

  /** The offered one first, then what is usual, each from low to high. */
  private Set<Double> numbers() {
    Optional<TradeRange> range = setting.range(source, direction);
    Set<Double> numbers = new LinkedHashSet<>();
    range.ifPresent(found -> found.offered().ifPresent(numbers::add));
    numbers.addAll(examples);
    List<Double> more = new ArrayList<>(setting.offers());
    range.ifPresent(
        found ->
            more.addAll(
                List.of(
                    found.cautiousLow(),
                    found.cautiousHigh(),
                    found.usualLow(),
                    found.usualHigh())));
    if (setting.byOmission() instanceof Default.Amount amount) {
      more.add(amount.value());
    }
    more.sort(
        Comparator.<Double, Verdict>comparing(number -> verdict(range, number))
            .thenComparing(Comparator.naturalOrder()));
    numbers.addAll(more);
    return numbers;
  }

  private List<List<Double>> spans() {
    return setting
        .range(source, direction)
        .map(
            range ->
                Stream.of(
                        List.of(range.usualLow(), range.usualHigh()),
                        List.of(range.cautiousLow(), range.cautiousHigh()))
                    .distinct()
                    .toList())
        .orElse(List.of());
  }

  /** Values that begin as typed, and the typed number in each unit in which it could be meant. */
  private List<Proposal> begunWith(String typed) {
    String begun = plain(typed);
    List<Proposal> proposals = new ArrayList<>();
    if (setting.takes() instanceof Takes.InUnit takes && !takes.isSpan()) {
      for (Unit unit : units(begun)) {
        String gap = unit == Unit.TO_ONE ? "" : " ";
        add(proposals, inUnit(begun, unit).withText(begun + gap + unit.symbol()), typed, begun);
      }
    }
    all().forEach(value -> add(proposals, value, typed, begun));
    return proposals;
  }

  /** Keeps a proposal that begins as typed, whatever sign was typed. */
  private static void add(List<Proposal> to, Proposal proposal, String typed, String begun) {
    String text = proposal.text();
    boolean isSigned = text.startsWith("+") && !begun.startsWith("+");
    String bare = isSigned ? text.substring(1) : text;
    boolean isNew =
        to.stream().noneMatch(one -> one.text().equals(text) || one.text().equals(bare));
    if (isNew && bare.startsWith(begun)) {
      to.add(proposal.withFilter(typed + bare.substring(begun.length())));
    }
  }

  /** The units of a number that stands there already. */
  List<Proposal> unitsOf(Item.Amount number) {
    String digits = plain(number.number());
    return units(digits).stream()
        .filter(unit -> unit != Unit.TO_ONE)
        .map(unit -> inUnit(digits, unit))
        .toList();
  }

  private Proposal inUnit(String digits, Unit unit) {
    double value = inSetting(Double.parseDouble(digits), unit);
    RangeText text = new RangeText(stage, setting, source, direction);
    Proposal meant = text.proposal(unit.symbol(), value);
    return new Proposal(
        unit.symbol(),
        Proposal.Kind.UNIT,
        digits + (unit == Unit.TO_ONE ? "" : " ") + unit.symbol() + ": " + meant.detail(),
        meant.paragraphs(),
        Optional.empty(),
        unit.symbol());
  }

  /** The units in which a number is possible here; those first in which it is usual. */
  private List<Unit> units(String digits) {
    if (!(setting.takes() instanceof Takes.InUnit takes) || !isNumber(digits)) {
      return List.of();
    }
    double number = Double.parseDouble(digits);
    Optional<TradeRange> range = setting.range(source, direction);
    return Arrays.stream(Unit.values())
        .filter(unit -> unit.dimension() == takes.unit().dimension())
        .filter(unit -> isPossible(inSetting(number, unit)))
        .sorted(
            Comparator.<Unit, Verdict>comparing(unit -> verdict(range, inSetting(number, unit)))
                .thenComparing(unit -> unit != takes.unit()))
        .toList();
  }

  private static Verdict verdict(Optional<TradeRange> range, double value) {
    return range.map(found -> found.verdict(value)).orElse(Verdict.USUAL);
  }

  private double inSetting(double number, Unit unit) {
    return setting.takes() instanceof Takes.InUnit takes && takes.unit() != unit
        ? unit.toBase(number) / takes.unit().toBase()
        : number;
  }

  /** How a range goes on behind its lower end. */
  List<Proposal> upperEnds(Item.Amount low, boolean isJoined) {
    List<Proposal> proposals = new ArrayList<>();
    RangeText text = new RangeText(stage, setting, source, direction);
    for (List<Double> ends : spans()) {
      double high = ends.get(1);
      if (isPossible(high) && isBelow(low, high)) {
        String end = ValueText.of(setting, high);
        proposals.add(text.proposal(isJoined ? end : "to " + end, high));
      }
    }
    if (!isJoined) {
      proposals.add(Proposal.of("to", Proposal.Kind.WORD, "joins both ends of a range"));
    }
    return proposals.stream()
        .collect(
            Collectors.toMap(Proposal::text, one -> one, (one, other) -> one, LinkedHashMap::new))
        .values()
        .stream()
        .toList();
  }

  /** The units of the upper end of a range, which hold for a lower end without one, too. */
  List<Proposal> unitsOf(Item.Range range) {
    return unitsOf(range.high()).stream()
        .filter(
            unit ->
                Unit.parse(unit.text())
                    .filter(
                        found ->
                            isBelow(
                                range.low(),
                                inSetting(Double.parseDouble(plain(range.high().number())), found)))
                    .isPresent())
        .toList();
  }

  /** Whether a lower end lies below a value; without a unit it has that of the value. */
  private boolean isBelow(Item.Amount low, double high) {
    String digits = plain(low.number());
    if (!isNumber(digits)) {
      return true;
    }
    Unit unit = low.unit().flatMap(Unit::parse).orElse(ValueText.unit(setting, high));
    double value = inSetting(Double.parseDouble(digits), unit);
    return value < high && isPossible(value);
  }

  private boolean isPossible(double value) {
    boolean exists = setting.offers().isEmpty() || setting.offers().contains(value);
    return exists && value >= end(setting.low(), -1) && value <= end(setting.high(), 1);
  }

  private double end(Limit limit, int side) {
    if (limit instanceof Limit.Fixed fixed) {
      return fixed.value();
    }
    return limit instanceof Limit.OfSampleRate share
        ? share.share() * rate.hertz()
        : side * Double.POSITIVE_INFINITY;
  }

  /** Whether a text is a whole number with its sign, as the notation writes it. */
  private static boolean isNumber(String text) {
    return text.matches("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)");
  }

  /** A typed number with a plain minus. */
  private static String plain(String typed) {
    return typed.replace('\u2212', '-').replace('\u2013', '-');
  }
}
