package chainwright.notation.catalogue;

import java.io.IOException;
import java.io.InputStream;
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
    for (StageKind stage : stages) {
      this.stages.put(stage.word(), stage);
    }
    for (SourceKind source : sources) {
      this.sources.put(source.word(), source);
    }
    for (Citation citation : citations) {
      this.citations.put(citation.key(), citation);
    }
  }

  /**
   * Returns the catalogue that this program carries.
   *
   * @return the same one at each call; read at the first
   * @throws IllegalStateException if the program was built without it
   */
  public static Catalogue load() {
    return Shipped.CATALOGUE;
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

  /**
   * Returns the citations.
   *
   * @return all of them, in the catalogue's order
   */
  public List<Citation> citations() {
    return List.copyOf(citations.values());
  }

  /** Holds the program's own catalogue; it is read when first asked for. */
  private static final class Shipped {

    private static final String RESOURCE = "catalogue.bin";
    private static final Catalogue CATALOGUE = read();

    private static Catalogue read() {
      try (InputStream bytes = Catalogue.class.getResourceAsStream(RESOURCE)) {
        if (bytes == null) {
          throw new IllegalStateException("the program was built without " + RESOURCE);
        }
        return CatalogueDecoder.decode(bytes.readAllBytes());
      } catch (IOException e) {
        throw new IllegalStateException(RESOURCE + " cannot be read", e);
      }
    }
  }
}
