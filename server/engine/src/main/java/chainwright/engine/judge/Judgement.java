package chainwright.engine.judge;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;

/**
 * The findings of one file, and what they were computed from, so that the next state of the text
 * costs only what has changed. Immutable.
 */
public final class Judgement {

  /** No file has been judged yet. */
  public static final Judgement NONE =
      new Judgement(List.of(), List.of(), new IdentityHashMap<>(), List.of());

  /** What was found in one chain, and everything it depends on. */
  record Verdict(Section section, Dependencies dependencies, List<Finding> findings) {}

  private final List<SourceFile> files;
  private final List<Finding> findings;
  private final IdentityHashMap<Section, Verdict> verdicts;
  private final List<String> routing;

  Judgement(
      List<SourceFile> files,
      List<Finding> findings,
      IdentityHashMap<Section, Verdict> verdicts,
      List<String> routing) {
    this.files = List.copyOf(files);
    this.findings = List.copyOf(findings);
    this.verdicts = verdicts;
    this.routing = routing;
  }

  /** Asks whether it was made of these files in this state, so that nothing can have changed. */
  boolean isOf(List<SourceFile> same) {
    boolean isSame = !files.isEmpty() && files.size() == same.size();
    for (int i = 0; i < same.size() && isSame; i++) {
      isSame = files.get(i) == same.get(i);
    }
    return isSame;
  }

  /** Returns the routing of this judgement if the new one is the same, so that one look tells. */
  List<String> sameRouting(List<String> newRouting) {
    return routing.equals(newRouting) ? routing : newRouting;
  }

  /**
   * Returns the findings.
   *
   * @return all of them; those of a section stand together
   */
  public List<Finding> findings() {
    return findings;
  }

  Optional<Verdict> verdict(Definition.Track track, Dependencies dependencies) {
    return Optional.ofNullable(verdicts.get(track.section()))
        .filter(verdict -> verdict.dependencies().isSame(dependencies));
  }
}
