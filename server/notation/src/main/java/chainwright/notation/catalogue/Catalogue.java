package chainwright.notation.catalogue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every stage kind, source kind and citation. Immutable. */
public final class Catalogue {

  private final Map<String, StageKind> stages = new LinkedHashMap<>();
  private final Map<String, SourceKind> sources = new LinkedHashMap<>();
  private final Map<String, Citation> citations = new LinkedHashMap<>();

  /**
   * Makes a catalogue.
   *
   * @param stages the stage kinds, in usual order
   * @param sources the source kinds
   * @param citations the citations
   */
  public Catalogue(List<StageKind> stages, List<SourceKind> sources, List<Citation> citations) {
    stages.forEach(stage -> this.stages.put(stage.word(), stage));
    sources.forEach(source -> this.sources.put(source.word(), source));
    citations.forEach(citation -> this.citations.put(citation.key(), citation));
  }

  /**
   * Returns the stage kinds.
   *
   * @return all of them, in usual order
   */
  public List<StageKind> stages() {
    return List.copyOf(stages.values());
  }

  /**
   * Finds a stage kind by its word.
   *
   * @param word such as "high-pass"
   * @return the kind, or empty
   */
  public Optional<StageKind> stage(String word) {
    return Optional.ofNullable(stages.get(word));
  }

  /**
   * Returns the source kinds.
   *
   * @return all of them, in the catalogue's order
   */
  public List<SourceKind> sources() {
    return List.copyOf(sources.values());
  }

  /**
   * Finds a source kind by its word.
   *
   * @param word such as "lead-vocal"
   * @return the kind, or empty
   */
  public Optional<SourceKind> source(String word) {
    return Optional.ofNullable(sources.get(word));
  }

  /**
   * Finds a citation by its key.
   *
   * @param key such as "CP"
   * @return the citation, or empty
   */
  public Optional<Citation> citation(String key) {
    return Optional.ofNullable(citations.get(key));
  }
}
