package chainwright.app.assist;

import chainwright.app.workspace.NearbyFiles;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Settings;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.ReservedWords;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Says what could be written at a place.
 *
 * @param catalogue the trade's knowledge
 * @param scope what the names mean
 * @param nearby finds files from the folder of the text
 * @param around what the section of the line says; empty if it defines nothing
 * @param found the codes of the rules that were found broken on the line
 */
public record Completing(
    Catalogue catalogue,
    Scope scope,
    NearbyFiles nearby,
    Optional<Definition> around,
    Set<String> found) {

  /**
   * What could be written.
   *
   * @param proposals the proposals, likeliest first
   * @param isWhole whether they stay the same while more letters are typed
   */
  public record Answer(List<Proposal> proposals, boolean isWhole) {

    private static final Answer NOTHING = new Answer(List.of(), true);

    /**
     * Copies the proposals.
     *
     * @param proposals the proposals
     * @param isWhole whether they stay the same
     */
    public Answer {
      proposals = List.copyOf(proposals);
    }
  }

  /**
   * Copies the codes.
   *
   * @param catalogue the trade's knowledge
   * @param scope what the names mean
   * @param nearby finds files
   * @param around what the section of the line says
   * @param found the codes of the rules found broken
   */
  public Completing {
    found = Set.copyOf(found);
  }

  /**
   * Returns what could be written.
   *
   * @param line what is known of the line
   * @return the proposals
   */
  public Answer at(WrittenLine line) {
    Answer answer = whole(line);
    return line.head().equals("group") ? answer : new Likeness(line).in(answer);
  }

  private Answer whole(WrittenLine line) {
    boolean isPath = (line.head().equals("take") || line.head().equals("import")) && isFirst(line);
    if (isPath) {
      FileProposals files = new FileProposals(nearby, line);
      return line.head().equals("take") ? files.recordings() : files.chains();
    }
    if (line.isQuoted()) {
      return Answer.NOTHING;
    }
    if (line.head().isEmpty()) {
      return new Answer(new HeadProposals(catalogue, scope, line).all(), true);
    }
    List<Proposal> proposals =
        new DeclarationProposals(catalogue, scope, line)
            .of(line.head())
            .orElseGet(() -> inStep(line));
    if (line.isTouchingNumber()) {
      proposals = proposals.stream().filter(one -> one.kind() == Proposal.Kind.UNIT).toList();
    }
    // A number that is typed brings its own units with every digit.
    boolean isWhole = !line.isNumber() && proposals.stream().noneMatch(Completing::isNumber);
    return new Answer(proposals, isWhole);
  }

  private static boolean isFirst(WrittenLine line) {
    return line.before().isEmpty()
        && (line.isQuoted() || line.after().stream().noneMatch(Item.Text.class::isInstance));
  }

  private static boolean isName(Item item) {
    return item instanceof Item.Word word && !ReservedWords.isTailMark(word.text());
  }

  private static boolean isNumber(Proposal proposal) {
    return proposal.kind() == Proposal.Kind.VALUE
        && "+-.0123456789".indexOf(proposal.text().charAt(0)) >= 0;
  }

  private List<Proposal> inStep(WrittenLine line) {
    Optional<SourceKind> source = line.around().source().flatMap(catalogue::source);
    List<Item> before = line.before();
    return switch (line.head()) {
      case "import", "session", "note", "during", "side-chain" -> List.of();
      case "preset", "chain", "bus" ->
          before.isEmpty() ? List.of() : clauses(line, before.subList(1, before.size()));
      case "apply" ->
          before.isEmpty() && line.after().stream().limit(1).anyMatch(Completing::isName)
              ? List.of()
              : before.isEmpty()
                  ? new NameProposals(scope, line.around().owner())
                      .presets(line.around().blocks().contains("preset"))
                  : clauses(line, before.subList(1, before.size()));
      case "band" -> new BandProposals(catalogue, scope, line).all();
      case "parallel", "mid-side", "mid", "side" -> clauses(line, before);
      default ->
          catalogue
              .stage(line.head())
              .map(
                  kind ->
                      new SettingProposals(kind, source, scope, found, written(line, kind))
                          .of(line, before))
              .orElse(List.of());
    };
  }

  /** What the line says as it was read; a line that is out of place says nothing. */
  private Settings written(WrittenLine line, StageKind kind) {
    return around
        .flatMap(definition -> SettingsAt.find(definition, line.typed().start()))
        .filter(settings -> settings.kind().word().equals(kind.word()))
        .orElseGet(() -> new Settings(kind, List.of()));
  }

  /** What a statement without settings may end with; a definition has no label. */
  private List<Proposal> clauses(WrittenLine line, List<Item> before) {
    boolean isDefinition = line.around().blocks().isEmpty();
    String says = Vocabulary.find(line.head()).map(Vocabulary.Keyword::says).orElse("");
    StageKind plain =
        new StageKind(line.head(), line.head(), Family.STRUCTURE, 0, says, "", "", List.of());
    return new SettingProposals(
            plain, Optional.empty(), scope, found, new Settings(plain, List.of()))
        .of(line, before).stream()
            .filter(proposal -> !isDefinition || !proposal.text().equals("as"))
            .toList();
  }
}
