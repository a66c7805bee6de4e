package chainwright.engine.judge;

import chainwright.engine.path.Paths;
import chainwright.engine.rules.Evidence;
import chainwright.engine.rules.Rule;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.NameChecks;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;

/**
 * Judges files: the findings of the text, of the names and of the rules, without those that the
 * author calls deliberate.
 *
 * @param catalogue the trade's knowledge
 */
public record Judge(Catalogue catalogue) {

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
    Scope scope = project.scope(key);
    Paths paths = new Paths(scope);
    List<String> routing = before.sameRouting(Dependencies.routing(scope));
    List<Finding> findings = new ArrayList<>(NameChecks.check(project, key, catalogue));
    IdentityHashMap<Section, Judgement.Verdict> verdicts = new IdentityHashMap<>();
    for (Lowered lowered : file.get().sections()) {
      findings.addAll(lowered.findings());
      if (lowered.definition().orElse(null) instanceof Definition.Track track) {
        Dependencies dependencies = Dependencies.of(track, scope, routing);
        Judgement.Verdict verdict =
            before
                .verdict(track, dependencies)
                .orElseGet(() -> new Judgement.Verdict(dependencies, judge(track, scope, paths)));
        verdicts.put(track.section(), verdict);
        findings.addAll(verdict.findings());
      } else if (lowered.definition().orElse(null) instanceof Definition.Preset preset) {
        findings.addAll(Deliberation.of(preset).unknownRules());
      }
    }
    return new Judgement(findings, verdicts, routing);
  }

  private List<Finding> judge(Definition.Track track, Scope scope, Paths paths) {
    Evidence evidence = new Evidence(paths.of(track), scope, paths, catalogue);
    List<Finding> found = new ArrayList<>();
    for (Rule rule : RuleBook.all()) {
      rule.check(evidence, found::add);
    }
    return Deliberation.of(track, scope).weigh(found);
  }
}
