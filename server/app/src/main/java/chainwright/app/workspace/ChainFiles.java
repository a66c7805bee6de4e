package chainwright.app.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
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
   * What a search came upon.
   *
   * @param files the chain files in the order of their names, at most a few thousand
   * @param refused what could not be looked into
   * @param isCut whether it ended early, because there was too much to look at
   */
  public record Search(List<Path> files, List<Path> refused, boolean isCut) {

    /**
     * Copies the lists.
     *
     * @param files the chain files
     * @param refused what could not be looked into
     * @param isCut whether it ended early
     */
    public Search {
      files = List.copyOf(files);
      refused = List.copyOf(refused);
    }
  }

  /**
   * Finds the chain files under folders.
   *
   * @param folders the folders; one that cannot be read counts as empty
   * @return the files in the order of their names, at most a few thousand
   */
  public static List<Path> under(List<Path> folders) {
    return search(folders).files();
  }

  /**
   * Finds the chain files under folders, and says what was left out.
   *
   * @param folders the folders
   * @return what it came upon
   */
  public static Search search(List<Path> folders) {
    Set<Path> found = new TreeSet<>();
    List<Path> refused = new ArrayList<>();
    boolean isCut = false;
    for (Path folder : folders) {
      try {
        Visitor visitor = new Visitor(folder, found, refused);
        Files.walkFileTree(folder, EnumSet.noneOf(FileVisitOption.class), MAX_DEPTH, visitor);
        isCut |= visitor.isCut;
      } catch (IOException e) {
        // The visitor goes on after every failure, so none comes out.
        throw new UncheckedIOException(e);
      }
    }
    return new Search(List.copyOf(found), refused, isCut);
  }

  private static final class Visitor extends SimpleFileVisitor<Path> {

    private final Path start;
    private final Set<Path> found;
    private final List<Path> refused;
    private int visited;
    private boolean isCut;

    Visitor(Path start, Set<Path> found, List<Path> refused) {
      this.start = start;
      this.found = found;
      this.refused = refused;
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
      isCut = found.size() >= MAX_FOUND || visited >= MAX_VISITED;
      return isCut ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failure) {
      refused.add(file);
      return FileVisitResult.CONTINUE;
    }
  }
}
