package chainwright.notation.project;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The files that are known together. Immutable. */
public final class Project {

  private final Map<String, SourceFile> files = new LinkedHashMap<>();

  /**
   * Puts files together.
   *
   * @param files the files; a later one replaces an earlier one of the same key
   */
  public Project(Collection<SourceFile> files) {
    files.forEach(file -> this.files.put(file.key(), file));
  }

  /**
   * Returns the files.
   *
   * @return all of them
   */
  public List<SourceFile> files() {
    return List.copyOf(files.values());
  }

  /**
   * Finds a file.
   *
   * @param key its key
   * @return the file, or empty if it is not known
   */
  public Optional<SourceFile> file(String key) {
    return Optional.ofNullable(files.get(key));
  }

  /**
   * Returns what the names in a file mean: its own definitions, then those of the files that it
   * imports, and of the files that those import.
   *
   * @param key the file's key
   * @return the scope; empty for a file that is not known
   */
  public Scope scope(String key) {
    Set<String> seen = new LinkedHashSet<>();
    Deque<String> open = new ArrayDeque<>(List.of(key));
    List<SourceFile> visible = new ArrayList<>();
    while (!open.isEmpty()) {
      String next = open.removeFirst();
      SourceFile file = files.get(next);
      if (seen.add(next) && file != null) {
        visible.add(file);
        open.addAll(file.imports());
      }
    }
    return new Scope(visible);
  }
}
