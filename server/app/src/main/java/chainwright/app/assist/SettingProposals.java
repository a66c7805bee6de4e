package chainwright.app.assist;

import chainwright.engine.rules.RuleBook;
import chainwright.engine.rules.RuleCard;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.model.Settings;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.ReservedWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Proposes settings, values and clauses on the line of a stage.
 *
 * @param kind the kind of stage
 * @param source the kind of source, if it is declared
 * @param scope what the names mean
 * @param found the codes of the rules that were found broken on this line
 * @param written what the line says as it stands
 */
record SettingProposals(
    StageKind kind, Optional<SourceKind> source, Scope scope, Set<String> found, Settings written) {

  SettingProposals {
    found = Set.copyOf(found);
  }

  /**
   * Proposes what may come next.
   *
   * @param line the line
   * @param before what counts of it before the caret's word
   */
  List<Proposal> of(WrittenLine line, List<Item> before) {
    StageLine state = StageLine.of(kind, before, line.after());
    return switch (state.wanted()) {
      case OWN_WORDS -> List.of();
      case RULE -> startsWithName(line.after()) ? List.of() : rules();
      case VALUE -> warned(value(state, line, before));
      case ANYTHING -> warned(anything(state, line, before));
    };
  }

  /** Whoever chooses a value is told what too much of the stage sounds like. */
  private List<Proposal> warned(List<Proposal> proposals) {
    String warning = "Too much of it: " + kind.overdone();
    return proposals.stream().map(one -> isValue(one) ? one.withRemark(warning) : one).toList();
  }

  private static boolean isValue(Proposal proposal) {
    return proposal.kind() == Proposal.Kind.VALUE || proposal.kind() == Proposal.Kind.UNIT;
  }

  private List<Proposal> value(StageLine state, WrittenLine line, List<Item> before) {
    Setting setting = state.open().orElseThrow();
    boolean takesWord =
        setting.takes() instanceof Takes.OneOf || setting.takes() instanceof Takes.Name;
    boolean hasWord = takesWord && startsWithName(line.after());
    boolean hasValue = !line.after().isEmpty() && !(line.after().get(0) instanceof Item.Word);
    if (hasValue || hasWord) {
      return List.of();
    }
    if (setting.takes() instanceof Takes.Name) {
      return new NameProposals(scope, line.around().owner()).tracks();
    }
    return amount(setting, state, line, before);
  }

  /** Whether a word follows that is neither a setting nor a clause, so it must be a value. */
  private boolean startsWithName(List<Item> after) {
    return after.stream()
        .limit(1)
        .anyMatch(
            item ->
                item instanceof Item.Word word
                    && kind.setting(word.text()).isEmpty()
                    && !ReservedWords.isTailMark(word.text()));
  }

  /** The value of a setting, or how a value that is begun goes on. */
  private List<Proposal> amount(
      Setting setting, StageLine state, WrittenLine line, List<Item> before) {
    ValueProposals values = values(setting, state);
    Optional<Item> last =
        before.isEmpty() ? Optional.empty() : Optional.of(before.get(before.size() - 1));
    if (last.isPresent() && last.get() instanceof Item.Range range) {
      return values.unitsOf(range);
    }
    if (last.isPresent() && last.get() instanceof Item.Amount amount) {
      List<Proposal> more = new ArrayList<>();
      if (StageLine.isSpan(setting)) {
        more.addAll(values.upperEnds(amount, false));
      }
      if (amount.unit().isEmpty()) {
        more.addAll(values.unitsOf(amount));
      }
      return more;
    }
    boolean isJoined =
        last.isPresent()
            && last.get() instanceof Item.Word word
            && word.text().equals("to")
            && before.size() > 1;
    if (isJoined && before.get(before.size() - 2) instanceof Item.Amount low) {
      return line.isNumber() ? List.of() : values.upperEnds(low, true);
    }
    return values.values(line);
  }

  private List<Proposal> anything(StageLine state, WrittenLine line, List<Item> before) {
    Item last = before.isEmpty() ? null : before.get(before.size() - 1);
    boolean isBare =
        (last instanceof Item.Amount amount && StageLine.dimension(amount).isEmpty())
            || (last instanceof Item.Range range
                && range.high().unit().isEmpty()
                && StageLine.dimension(range.high()).isEmpty());
    if (isBare && isUnitWanted(before)) {
      return positional(state).stream()
          .flatMap(setting -> amount(setting, state, line, before).stream())
          .toList();
    }
    if (last instanceof Item.Word word && word.text().equals("to") && before.size() > 1) {
      return positional(state).stream()
          .filter(StageLine::isSpan)
          .flatMap(setting -> amount(setting, state, line, before).stream())
          .toList();
    }
    List<Proposal> proposals = new ArrayList<>();
    boolean isBehindClause = StageLine.of(kind, before, List.of()).hasClauses();
    if (!isBehindClause) {
      proposals.addAll(settings(state, line));
    }
    boolean isEnd =
        line.after().isEmpty()
            || (line.after().get(0) instanceof Item.Word word
                && ReservedWords.isTailMark(word.text()));
    if (!line.isNumber() && isEnd) {
      proposals.addAll(clauses(state, line.after().isEmpty()));
    }
    return proposals;
  }

  /** Whether the number at the end is not the plain value of a setting such as Q. */
  private boolean isUnitWanted(List<Item> before) {
    List<Item> shorter = before.subList(0, before.size() - 1);
    return StageLine.of(kind, shorter, List.of()).wanted() == StageLine.Wanted.ANYTHING;
  }

  /** What must be written first, values before names. */
  private List<Proposal> settings(StageLine state, WrittenLine line) {
    List<Proposal> proposals = new ArrayList<>();
    for (boolean isRequired : new boolean[] {true, false}) {
      for (Setting setting : positional(state)) {
        if (isRequired(setting) == isRequired) {
          proposals.addAll(values(setting, state).values(line));
        }
      }
      for (Setting setting : kind.settings()) {
        boolean isNamed = !setting.isPositional() && isRequired(setting) == isRequired;
        boolean fits = !wouldTakeWhatFollows(setting, line) && written.isInEffect(setting);
        if (isNamed && fits && !state.isWritten(setting) && !line.isNumber()) {
          proposals.add(named(setting));
        }
      }
    }
    return proposals.stream()
        .filter(one -> !line.isNumber() || Character.isDigit(digit(one.text())))
        .toList();
  }

  /** Whether what stands behind the caret would be read as the value of a setting written here. */
  private static boolean wouldTakeWhatFollows(Setting setting, WrittenLine line) {
    if (line.after().isEmpty() || setting.takes() instanceof Takes.Flag) {
      return false;
    }
    boolean takesWord =
        setting.takes() instanceof Takes.OneOf || setting.takes() instanceof Takes.Name;
    return takesWord || !(line.after().get(0) instanceof Item.Word);
  }

  private static char digit(String text) {
    return text.charAt("+-.".indexOf(text.charAt(0)) >= 0 && text.length() > 1 ? 1 : 0);
  }

  private List<Setting> positional(StageLine state) {
    return kind.settings().stream()
        .filter(Setting::isPositional)
        .filter(setting -> !state.isWritten(setting) && written.isInEffect(setting))
        .toList();
  }

  private Proposal named(Setting setting) {
    String detail = isRequired(setting) ? "must be written" : byOmission(setting);
    List<String> range =
        setting
            .row(source, RangeRow.Direction.ANY)
            .map(
                row ->
                    new RangeText(kind.word(), setting, source, RangeRow.Direction.ANY).range(row))
            .orElse(List.of());
    List<String> paragraphs = new ArrayList<>(List.of(setting.says()));
    paragraphs.addAll(range);
    return Proposal.of(
        setting.name(), Proposal.Kind.SETTING, detail, paragraphs.toArray(new String[0]));
  }

  private static String byOmission(Setting setting) {
    if (setting.byOmission() instanceof Default.Amount amount) {
      return "default: " + ValueText.of(setting, amount.value());
    }
    if (setting.byOmission() instanceof Default.Word word) {
      return "default: " + word.word();
    }
    return setting.byOmission() instanceof Default.Computed computed
        ? "default: " + computed.how()
        : "";
  }

  private static boolean isRequired(Setting setting) {
    return setting.byOmission() instanceof Default.Required;
  }

  /** Before another clause only one that takes no name: it would take that clause for it. */
  private static List<Proposal> clauses(StageLine state, boolean isLast) {
    return Vocabulary.at(Vocabulary.Place.CLAUSE).stream()
        .filter(one -> one.text().equals("deliberate") || !state.hasClause(one.text()))
        .filter(one -> isLast || one.text().equals("bypassed"))
        .map(
            one ->
                Proposal.of(
                    one.text(), Proposal.Kind.WORD, one.says(), "For example: " + one.form()))
        .toList();
  }

  /** All rules, those first that were found broken on this line. */
  private List<Proposal> rules() {
    return RuleBook.all().stream()
        .map(rule -> rule.card())
        .sorted(Comparator.comparing(card -> !found.contains(card.code())))
        .map(this::rule)
        .toList();
  }

  private Proposal rule(RuleCard card) {
    String here = found.contains(card.code()) ? "found on this line: " : "";
    return Proposal.of(card.code(), Proposal.Kind.NAME, here + card.title(), card.why())
        .withSnippet(Snippets.rule(card.code()));
  }

  private ValueProposals values(Setting setting, StageLine state) {
    return new ValueProposals(
        kind.word(), setting, List.of(), source, state.direction(), scope.sampleRate());
  }
}
