package chainwright.notation.project;

import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxTree;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Objects;

/**
 * One file: its key, its tree and what its sections say. Immutable; another state of the text keeps
 * the reading of every section that has not changed.
 */
public final class SourceFile {

  private final String key;
  private final SyntaxTree tree;
  private final List<Lowered> sections;
  private final List<Definition> definitions;
  private final SectionReader reader;

  private SourceFile(String key, SyntaxTree tree, List<Lowered> sections, SectionReader reader) {
    this.key = key;
    this.tree = tree;
    this.sections = List.copyOf(sections);
    this.reader = reader;
    List<Definition> named = new ArrayList<>();
    for (Lowered lowered : sections) {
      if (lowered.definition().isPresent()) {
        named.add(lowered.definition().get());
      }
    }
    this.definitions = List.copyOf(named);
  }

  /**
   * Reads a file.
   *
   * @param key its path, with forward slashes
   * @param text its text
   * @param reader reads sections
   * @return the file
   */
  public static SourceFile of(String key, String text, SectionReader reader) {
    return of(key, SyntaxTree.parse(text, reader.spread()), reader);
  }

  /**
   * Reads a file that is parsed already.
   *
   * @param key its path, with forward slashes
   * @param tree its tree
   * @param reader reads sections
   * @return the file
   */
  public static SourceFile of(String key, SyntaxTree tree, SectionReader reader) {
    return new SourceFile(key, SyntaxTree.parse(""), List.of(), reader).withTree(tree);
  }

  /**
   * Reads another state of the file.
   *
   * @param newTree the tree after the edit; sections that it shares with the old tree are not read
   *     again
   * @return the file after the edit
   */
  public SourceFile withTree(SyntaxTree newTree) {
    IdentityHashMap<Section, Lowered> known = new IdentityHashMap<>();
    for (Lowered lowered : sections) {
      known.put(lowered.section(), lowered);
    }
    List<Section> unknown = new ArrayList<>();
    for (Section section : newTree.sections()) {
      if (!known.containsKey(section)) {
        unknown.add(section);
      }
    }
    for (Lowered lowered : reader.readAll(unknown)) {
      known.put(lowered.section(), lowered);
    }
    List<Lowered> result = new ArrayList<>(newTree.sections().size());
    for (Section section : newTree.sections()) {
      result.add(Objects.requireNonNull(known.get(section), "every section is read"));
    }
    return new SourceFile(key, newTree, result, reader);
  }

  /**
   * Returns the file's key.
   *
   * @return its path, with forward slashes
   */
  public String key() {
    return key;
  }

  /**
   * Returns the tree.
   *
   * @return the lossless tree of its text
   */
  public SyntaxTree tree() {
    return tree;
  }

  /**
   * Returns what the sections say.
   *
   * @return one reading a section, in the order of the text
   */
  public List<Lowered> sections() {
    return sections;
  }

  /**
   * Returns the definitions.
   *
   * @return those that have a name, in the order of the text
   */
  public List<Definition> definitions() {
    return definitions;
  }

  /**
   * Returns the keys of the files that this one imports.
   *
   * @return the keys, in the order of the text
   */
  public List<String> imports() {
    List<String> imports = new ArrayList<>();
    for (Definition one : definitions) {
      if (one instanceof Definition.Import found) {
        imports.add(resolve(found.path()));
      }
    }
    return imports;
  }

  /**
   * Returns the key of a file that is named from this one.
   *
   * @param path as written, from the folder of this file
   * @return the other file's key, without {@code .} and {@code ..}
   */
  public String resolve(String path) {
    String plain = path.replace('\\', '/');
    boolean isAbsolute = plain.startsWith("/") || plain.matches("[A-Za-z]:/.*");
    int slash = key.lastIndexOf('/');
    String joined = isAbsolute || slash < 0 ? plain : key.substring(0, slash + 1) + plain;
    List<String> parts = new ArrayList<>();
    for (String part : joined.split("/", -1)) {
      boolean goesUp =
          part.equals("..") && !parts.isEmpty() && !parts.get(parts.size() - 1).isEmpty();
      if (goesUp) {
        parts.remove(parts.size() - 1);
      } else if (!part.equals(".")) {
        parts.add(part);
      }
    }
    return String.join("/", parts);
  }
}
