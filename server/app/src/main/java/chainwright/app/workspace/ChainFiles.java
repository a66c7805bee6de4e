package chainwright.app.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The chain files under folders, without hidden folders and those of build tools. */
public final class ChainFiles {

  /** What a file of chains is called. */
  public static final String ENDING = ".chain";

  /** How many chain files, and how many entries in all, one search looks at. */
  private static final int MAX_FOUND = 2_000;

  private static final int MAX_VISITED = 50_000;
  private static final int MAX_DEPTH = 12;
  private static final Set<String> BUILT = Set.of("node_modules", "target");

  private ChainFiles() {}

  /**
   * Finds the chain files under folders.
   *
   * @param folders the folders; one that cannot be read counts as empty
   * @return the files in the order of their names, at most a few thousand
   */
  public static List<Path> under(List<Path> folders) {
    Set<Path> found = new TreeSet<>();
    for (Path folder : folders) {
      try {
        Files.walkFileTree(
            folder, EnumSet.noneOf(FileVisitOption.class), MAX_DEPTH, new Visitor(folder, found));
      } catch (IOException e) {
        // The visitor goes on after every failure, so none comes out.
        throw new UncheckedIOException(e);
      }
    }
    return List.copyOf(found);
  }

  private static final class Visitor extends SimpleFileVisitor<Path> {

    private final Path start;
    private final Set<Path> found;
    private int visited;

    Visitor(Path start, Set<Path> found) {
      this.start = start;
      this.found = found;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      Path last = folder.getFileName();
      String name = last == null ? "" : last.toString();
      boolean isSkipped = !folder.equals(start) && (name.startsWith(".") || BUILT.contains(name));
      return isSkipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (attributes.isRegularFile() && file.toString().endsWith(ENDING)) {
        found.add(file);
      }
      visited++;
      return found.size() < MAX_FOUND && visited < MAX_VISITED
          ? FileVisitResult.CONTINUE
          : FileVisitResult.TERMINATE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failure) {
      return FileVisitResult.CONTINUE;
    }
  }
}
