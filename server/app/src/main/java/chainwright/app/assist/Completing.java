package chainwright.app.assist;

import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.lowering.Vocabulary.Place;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Says what could be written at a place. It reads the lines above and the words before the caret,
 * since a line that is being written can seldom be understood as a whole.
 *
 * @param catalogue the trade's knowledge
 * @param scope what the names mean
 */
public record Completing(Catalogue catalogue, Scope scope) {

  /**
   * Returns what could be written.
   *
   * @param line what is known of the line
   * @return the proposals, likeliest first
   */
  public List<Proposal> at(WrittenLine line) {
    if (line.words().isEmpty()) {
      return first(line);
    }
    String head = line.words().get(0);
    return switch (head) {
      case "apply" -> presets();
      case "to", "send" -> line.words().size() == 1 ? tracks(true) : List.of();
      case "source" -> sources();
      case "spill" -> joined(tracks(false), sources());
      case "intent" -> words("natural", "dense", "aggressive");
      case "listeners" -> words("adults", "minors");
      default -> inStage(line, head);
    };
  }

  private List<Proposal> first(WrittenLine line) {
    return switch (line.block()) {
      case "" -> keywords(Place.TOP);
      case "session" -> keywords(Place.SESSION);
      case "parallel" -> keyword("path");
      case "mid-side" -> joined(keyword("mid"), keyword("side"));
      case "multiband" -> keyword("band");
      case "chain", "bus" ->
          line.stageAbove().isPresent()
              ? joined(stages(line), keywords(Place.STRUCTURE))
              : joined(
                  keywords(Place.DECLARATION), joined(stages(line), keywords(Place.STRUCTURE)));
      default ->
          catalogue
                  .stage(line.block())
                  .filter(kind -> kind.family() != Family.STRUCTURE)
                  .isPresent()
              ? keyword("side-chain")
              : joined(stages(line), keywords(Place.STRUCTURE));
    };
  }

  /** The stages whose usual place is after the one above, then those before it. */
  private List<Proposal> stages(WrittenLine line) {
    int above =
        line.stageAbove().flatMap(catalogue::stage).map(StageKind::order).orElse(Integer.MIN_VALUE);
    return catalogue.stages().stream()
        .filter(kind -> kind.family() != Family.STRUCTURE)
        .sorted(
            Comparator.<StageKind>comparingInt(kind -> kind.order() >= above ? 0 : 1)
                .thenComparingInt(StageKind::order))
        .map(
            kind ->
                new Proposal(
                    kind.word(),
                    Proposal.Kind.STAGE,
                    kind.title(),
                    kind.says() + " " + kind.place()))
        .toList();
  }

  private List<Proposal> inStage(WrittenLine line, String head) {
    Optional<StageKind> kind = catalogue.stage(head);
    String last = line.words().get(line.words().size() - 1);
    if (last.equals("deliberate")) {
      return RuleBook.all().stream()
          .map(
              rule ->
                  new Proposal(
                      rule.card().code(),
                      Proposal.Kind.NAME,
                      rule.card().title(),
                      rule.card().why()))
          .toList();
    }
    if (kind.isEmpty()) {
      return List.of();
    }
    if (last.equals("key") || last.equals("with")) {
      return tracks(false);
    }
    return new SettingProposals(kind.get(), line.source().flatMap(catalogue::source)).of(line);
  }

  private List<Proposal> presets() {
    return scope.presets().stream()
        .map(
            preset ->
                new Proposal(preset.name().text(), Proposal.Kind.NAME, "preset", preset.title()))
        .toList();
  }

  private List<Proposal> tracks(boolean busesOnly) {
    return scope.tracks().stream()
        .filter(track -> track.isBus() || !busesOnly)
        .map(
            track ->
                new Proposal(
                    track.name().text(),
                    Proposal.Kind.NAME,
                    track.isBus() ? "bus" : "chain",
                    track.title()))
        .toList();
  }

  private List<Proposal> sources() {
    return catalogue.sources().stream()
        .map(kind -> new Proposal(kind.word(), Proposal.Kind.NAME, kind.title(), describe(kind)))
        .toList();
  }

  private static String describe(SourceKind kind) {
    return kind.note();
  }

  private static List<Proposal> keywords(Place place) {
    return Vocabulary.at(place).stream().map(Completing::proposal).toList();
  }

  private static List<Proposal> keyword(String word) {
    return Vocabulary.find(word).map(found -> List.of(proposal(found))).orElse(List.of());
  }

  private static Proposal proposal(Vocabulary.Keyword keyword) {
    return new Proposal(
        keyword.text(), Proposal.Kind.WORD, keyword.says(), "For example: " + keyword.form());
  }

  private static List<Proposal> words(String... words) {
    List<Proposal> proposals = new ArrayList<>();
    for (String word : words) {
      proposals.add(new Proposal(word, Proposal.Kind.VALUE, "", ""));
    }
    return proposals;
  }

  private static List<Proposal> joined(List<Proposal> first, List<Proposal> second) {
    List<Proposal> all = new ArrayList<>(first);
    all.addAll(second);
    return all;
  }
}
