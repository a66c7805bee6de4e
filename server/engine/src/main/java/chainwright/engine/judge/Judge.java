package chainwright.engine.judge;

import chainwright.engine.path.Paths;
import chainwright.engine.rules.Evidence;
import chainwright.engine.rules.Rule;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.NameChecks;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Spread;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Judges files: the findings of the text, of the names and of the rules, without those that the
 * author calls deliberate.
 *
 * @param catalogue the trade's knowledge
 * @param spread how many chains are judged
 */
public record Judge(Catalogue catalogue, Spread spread) {

  /**
   * Makes a judge that judges one chain after the other.
   *
   * @param catalogue the trade's knowledge
   */
  public Judge(Catalogue catalogue) {
    this(catalogue, Spread.IN_TURN);
  }

  /** The rules that find values which cannot be built. */
  private static final Set<String> IMPOSSIBLE = Set.of("outside-limits", "frequency-above-nyquist");

  /** The rules that compare a value with what is usual, and know no other reason. */
  private static final Set<String> USUALNESS = Set.of("uncommon-value", "extreme-value");

  /**
   * Judges a file.
   *
   * @param project the files that are known
   * @param key the file's key
   * @param before the judgement of an earlier state of the same file, or {@link Judgement#NONE};
   *     chains on which nothing has changed are not judged again
   * @return the judgement; empty for a file that is not known
   */
  public Judgement judge(Project project, String key, Judgement before) {
    Optional<SourceFile> file = project.file(key);
    if (file.isEmpty()) {
      return Judgement.NONE;
    }
    if (before.isOf(project.files())) {
      return before;
    }
    Scope scope = project.scope(key);
    Paths paths = new Paths(scope);
    List<String> routing = before.sameRouting(Dependencies.routing(scope));
    List<Finding> findings = new ArrayList<>(NameChecks.check(project, key, catalogue));
    IdentityHashMap<Section, Judgement.Verdict> verdicts = new IdentityHashMap<>();
    List<Definition.Track> tracks = new ArrayList<>();
    for (Lowered lowered : file.get().sections()) {
      if (lowered.definition().orElse(null) instanceof Definition.Track track) {
        tracks.add(track);
      }
    }
    for (Judgement.Verdict verdict :
        spread.map(tracks, track -> verdict(track, scope, paths, routing, before))) {
      verdicts.put(verdict.section(), verdict);
    }
    for (Lowered lowered : file.get().sections()) {
      findings.addAll(lowered.findings());
      Judgement.Verdict verdict = verdicts.get(lowered.section());
      if (verdict != null) {
        findings.addAll(verdict.findings());
      } else if (lowered.definition().orElse(null) instanceof Definition.Preset preset) {
        findings.addAll(Deliberation.of(preset).unknownRules());
      }
    }
    return new Judgement(project.files(), findings, verdicts, routing);
  }

  private Judgement.Verdict verdict(
      Definition.Track track, Scope scope, Paths paths, List<String> routing, Judgement before) {
    Dependencies dependencies = Dependencies.of(track, scope, routing);
    Optional<Judgement.Verdict> known = before.verdict(track, dependencies);
    return known.isPresent()
        ? known.get()
        : new Judgement.Verdict(track.section(), dependencies, judge(track, scope, paths));
  }

  /** Leaves out what is said of the usualness or the sound of a value that cannot be. */
  private static List<Finding> possible(List<Finding> found) {
    Set<Place> impossible = new HashSet<>();
    for (Finding finding : found) {
      if (IMPOSSIBLE.contains(finding.code())) {
        impossible.add(finding.place());
      }
    }
    if (impossible.isEmpty()) {
      return found;
    }
    return found.stream()
        .filter(one -> IMPOSSIBLE.contains(one.code()) || !impossible.contains(one.place()))
        .toList();
  }

  /**
   * Leaves out that a value is unusual where a rule that knows a reason says what to write in its
   * place: two fixes of one value would name two values.
   */
  private static List<Finding> withoutSecondAdvice(List<Finding> found) {
    Set<Place> advised = new HashSet<>();
    for (Finding finding : found) {
      if (!USUALNESS.contains(finding.code())) {
        finding.fixes().stream()
            .filter(Fix::isPreferred)
            .flatMap(fix -> fix.edits().stream())
            .forEach(edit -> advised.add(new Place(edit.section(), edit.edit().span())));
      }
    }
    if (advised.isEmpty()) {
      return found;
    }
    return found.stream()
        .filter(one -> !USUALNESS.contains(one.code()) || !advised.contains(one.place()))
        .toList();
  }

  private List<Finding> judge(Definition.Track track, Scope scope, Paths paths) {
    Evidence evidence = new Evidence(paths.of(track), scope, paths, catalogue);
    List<Finding> found = new ArrayList<>();
    Consumer<Finding> report = found::add;
    for (Rule rule : RuleBook.all()) {
      rule.check(evidence, report);
    }
    return Deliberation.of(track, scope).weigh(withoutSecondAdvice(possible(found)));
  }
}
