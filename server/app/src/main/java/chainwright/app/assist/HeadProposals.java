package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.lowering.Vocabulary.Keyword;
import chainwright.notation.lowering.Vocabulary.Place;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Proposes the first words of statements.
 *
 * @param catalogue the trade's knowledge
 * @param scope what the names mean
 * @param line the line that is begun
 */
record HeadProposals(Catalogue catalogue, Scope scope, WrittenLine line) {

  /** What may be declared more than once. */
  private static final Set<String> REPEATED = Set.of("spill", "to", "send", "listen");

  List<Proposal> all() {
    WrittenLine.Surroundings around = line.around();
    return switch (around.block()) {
      case "" -> top();
      case "session" -> withNote(facts());
      case "parallel" -> withNote(keywords(List.of("path")));
      case "multiband" -> withNote(keywords(List.of("band")));
      case "mid-side" -> withNote(keywords(free(List.of("mid", "side"))));
      case "chain", "bus" -> withNote(inTrack());
      case "preset" ->
          withNote(
              joined(hasStageAbove() ? List.of() : keywords(free(List.of("source"))), steps()));
      case "path", "band", "mid", "side", "during", "insert" -> withNote(steps());
      case "side-chain" -> stages(StageOrder.Fit.values());
      default -> inStage(around.block());
    };
  }

  private List<Proposal> top() {
    boolean hasSession =
        scope.files().stream()
            .limit(1)
            .flatMap(file -> file.definitions().stream())
            .anyMatch(Definition.Session.class::isInstance);
    return Vocabulary.at(Place.TOP).stream()
        .filter(keyword -> !hasSession || !keyword.text().equals("session"))
        .map(this::proposal)
        .toList();
  }

  private List<Proposal> facts() {
    List<String> words = new ArrayList<>();
    Vocabulary.at(Place.SESSION).forEach(keyword -> words.add(keyword.text()));
    words.add("intent");
    return keywords(free(words));
  }

  private List<Proposal> inTrack() {
    if (hasStageAbove()) {
      return joined(steps(), keywords(List.of("listen")));
    }
    List<String> declared =
        Vocabulary.at(Place.DECLARATION).stream()
            .map(Keyword::text)
            .filter(word -> REPEATED.contains(word) || !line.around().holds(word))
            .toList();
    return joined(keywords(declared), steps());
  }

  private boolean hasStageAbove() {
    List<String> declared = Vocabulary.at(Place.DECLARATION).stream().map(Keyword::text).toList();
    return line.around().above().stream()
        .anyMatch(word -> !word.isEmpty() && !word.equals("note") && !declared.contains(word));
  }

  /** The stages that fit here, what holds stages, then the stages that fit less. */
  private List<Proposal> steps() {
    List<Proposal> steps = new ArrayList<>(stages(StageOrder.Fit.HERE));
    steps.addAll(keywords(Vocabulary.at(Place.STRUCTURE).stream().map(Keyword::text).toList()));
    steps.addAll(stages(StageOrder.Fit.TWICE, StageOrder.Fit.LATER, StageOrder.Fit.EARLIER));
    return steps;
  }

  private List<Proposal> stages(StageOrder.Fit... fits) {
    Optional<SourceKind> source = line.around().source().flatMap(catalogue::source);
    return new StageOrder(catalogue, line.around())
        .ranked().stream()
            .filter(ranked -> List.of(fits).contains(ranked.fit()))
            .map(ranked -> stage(ranked, source))
            .toList();
  }

  private static Proposal stage(StageOrder.Ranked ranked, Optional<SourceKind> source) {
    StageKind kind = ranked.kind();
    return Proposal.of(
            kind.word(),
            Proposal.Kind.STAGE,
            kind.title() + ": " + ranked.reason(),
            kind.says(),
            "Its place: " + kind.place(),
            "Too much of it: " + kind.overdone())
        .withSnippet(Snippets.stage(kind, source));
  }

  private List<Proposal> inStage(String word) {
    Optional<StageKind> kind =
        catalogue.stage(word).filter(found -> found.family() != Family.STRUCTURE);
    if (kind.isEmpty()) {
      return List.of();
    }
    boolean hasDetector = kind.get().setting("key").isPresent();
    return withNote(hasDetector ? keywords(free(List.of("side-chain"))) : List.of());
  }

  private List<String> free(List<String> words) {
    return words.stream().filter(word -> !line.around().holds(word)).toList();
  }

  private List<Proposal> withNote(List<Proposal> before) {
    return joined(before, keywords(List.of("note")));
  }

  private List<Proposal> keywords(List<String> words) {
    return words.stream()
        .flatMap(word -> Vocabulary.find(word).stream())
        .map(this::proposal)
        .toList();
  }

  private Proposal proposal(Keyword keyword) {
    Proposal plain =
        Proposal.of(
            keyword.text(), Proposal.Kind.WORD, keyword.says(), "For example: " + keyword.form());
    return Snippets.word(keyword.text()).map(plain::withSnippet).orElse(plain);
  }

  private static List<Proposal> joined(List<Proposal> first, List<Proposal> second) {
    List<Proposal> all = new ArrayList<>(first);
    all.addAll(second);
    return all;
  }
}
