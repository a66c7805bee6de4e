package chainwright.notation.catalogue.yaml;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Reads and checks the catalogue's YAML.
 *
 * <p>Everything that a program could rely on is checked here, once, so that no other class has to
 * doubt the catalogue: keys, units, ranges inside each other, citations, source kinds, and that
 * positional settings can be told apart.
 */
public final class CatalogueReader {

  static final Pattern WORD = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*|Q");

  private static final String CITATIONS = "citations.yaml";
  private static final String SOURCES = "sources.yaml";
  private static final Map<String, String> KNOWN =
      Map.of("opened", "opened", "memory", "from memory", "computed", "computed", "none", "none");

  private final Map<String, Citation> citations = new LinkedHashMap<>();
  private final Map<String, SourceKind> sources = new LinkedHashMap<>();

  private CatalogueReader() {}

  /**
   * Reads a catalogue.
   *
   * @param files the text of each file by its path, such as "stages/bell.yaml"; "sources.yaml" and
   *     "citations.yaml" must be there
   * @return the catalogue, its stages in usual order
   * @throws CatalogueException if a file is wrong, with its path and the reason
   */
  public static Catalogue read(Map<String, String> files) {
    return new CatalogueReader().readAll(files);
  }

  private Catalogue readAll(Map<String, String> files) {
    readCitations(open(files, CITATIONS).need("citations"));
    open(files, SOURCES).need("sources").items().forEach(this::readSource);
    for (SourceKind kind : sources.values()) {
      kind.like()
          .filter(like -> !sources.containsKey(like) || like.equals(kind.word()))
          .ifPresent(
              like -> {
                throw new CatalogueException(
                    SOURCES, kind.word(), "`like` names no other source kind: " + like);
              });
    }
    List<StageKind> stages = new ArrayList<>();
    StageReader reader = new StageReader(citations, sources.keySet());
    new TreeMap<>(files)
        .forEach(
            (file, text) -> {
              if (file.startsWith("stages/")) {
                stages.add(reader.read(YamlValue.parse(file, text)));
              } else if (!file.equals(CITATIONS) && !file.equals(SOURCES)) {
                throw new CatalogueException(file, "", "no file of the catalogue is called so");
              }
            });
    stages.sort(Comparator.comparingInt(StageKind::order).thenComparing(StageKind::word));
    return new Catalogue(stages, List.copyOf(sources.values()), List.copyOf(citations.values()));
  }

  private static YamlValue open(Map<String, String> files, String file) {
    String text = files.get(file);
    if (text == null) {
      throw new CatalogueException(file, "", "the file is missing");
    }
    return YamlValue.parse(file, text);
  }

  private void readCitations(YamlValue all) {
    for (String key : all.keys()) {
      YamlValue entry = all.need(key);
      entry.requireKeys(Set.of("citation", "known", "read"));
      String known = KNOWN.get(entry.need("known").text());
      if (known == null) {
        throw entry.need("known").fault("must be opened, memory, computed or none");
      }
      Optional<String> read = entry.field("read").map(YamlValue::text);
      citations.put(
          key,
          new Citation(
              key, entry.need("citation").text(), read.map(r -> known + ": " + r).orElse(known)));
    }
  }

  private void readSource(YamlValue entry) {
    entry.requireKeys(
        Set.of(
            "word",
            "title",
            "like",
            "lowest-hz",
            "lowest-note",
            "highest-hz",
            "about",
            "crest",
            "spill",
            "zones",
            "source"));
    String word = word(entry.need("word"));
    if (sources.containsKey(word)) {
      throw entry.need("word").fault("the word `" + word + "` is taken");
    }
    OptionalDouble lowest =
        entry
            .field("lowest-hz")
            .map(low -> OptionalDouble.of(low.number()))
            .orElse(OptionalDouble.empty());
    double highest = entry.need("highest-hz").number();
    if (lowest.isPresent() && !(0 < lowest.getAsDouble() && lowest.getAsDouble() < highest)) {
      throw entry
          .need("lowest-hz")
          .fault("must lie between 0 and highest-hz, but was " + lowest.getAsDouble());
    }
    double[] crest = entry.need("crest").pair();
    sources.put(
        word,
        new SourceKind(
            word,
            entry.need("title").text(),
            lowest,
            entry.field("lowest-note").map(YamlValue::text).orElse(""),
            highest,
            entry.need("about").text(),
            crest[0],
            crest[1],
            entry.need("spill").text(),
            entry.field("like").map(YamlValue::text),
            zones(entry.need("zones")),
            citations(entry.need("source"), citations)));
  }

  private static List<Zone> zones(YamlValue all) {
    List<Zone> zones = new ArrayList<>();
    for (String name : all.keys()) {
      double[] ends = all.need(name).pair();
      if (ends[0] < 0 || ends[0] >= ends[1]) {
        throw all.need(name).fault("a zone must go from 0 Hz or more to a higher frequency");
      }
      if (!zones.isEmpty() && zones.get(zones.size() - 1).lowHz() > ends[0]) {
        throw all.need(name).fault("zones must stand lowest first");
      }
      zones.add(new Zone(name, ends[0], ends[1]));
    }
    return zones;
  }

  static List<Citation> citations(YamlValue keys, Map<String, Citation> known) {
    List<Citation> found = new ArrayList<>();
    for (YamlValue key : keys.items()) {
      Citation citation = known.get(key.text());
      if (citation == null) {
        throw key.fault("no citation has the key `" + key.text() + "`");
      }
      found.add(citation);
    }
    if (found.isEmpty()) {
      throw keys.fault("at least one citation is needed");
    }
    return found;
  }

  static String word(YamlValue value) {
    String word = value.text();
    if (!WORD.matcher(word).matches()) {
      throw value.fault("a word must be written in kebab-case, but was `" + word + "`");
    }
    return word;
  }
}
