package chainwright.app.workspace;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The files that a document could name, one folder at a time.
 *
 * @param document the document; paths count from its folder
 * @param workspace the documents at hand
 */
public record NearbyFiles(DocumentSnapshot document, Workspace workspace) {

  /** How many entries of a folder are looked at, and how many are named. */
  private static final int MAX_VISITED = 5_000;

  private static final int MAX_NAMED = 200;

  /** The endings of recordings, of formats that a published standard describes. */
  private static final List<String> RECORDINGS =
      List.of(".wav", ".wave", ".bwf", ".rf64", ".flac", ".aif", ".aiff", ".ogg", ".opus", ".mp3");

  /**
   * Returns how the names of recordings end.
   *
   * @return such as ".wav", in lower case
   */
  public static List<String> recordingEndings() {
    return RECORDINGS;
  }

  /**
   * A file or a folder.
   *
   * @param name its name, without its path
   * @param isFolder whether it is a folder
   */
  public record Entry(String name, boolean isFolder) {}

  /**
   * What is in a folder.
   *
   * @param entries folders first, each in the order of the names
   * @param isWhole whether nothing was left out for being too much
   */
  public record Listing(List<Entry> entries, boolean isWhole) {

    /**
     * Copies the entries.
     *
     * @param entries the entries
     * @param isWhole whether nothing was left out
     */
    public Listing {
      entries = List.copyOf(entries);
    }
  }

  /**
   * Finds recordings.
   *
   * @param folder the folder, from that of the document, empty or ending with a slash
   * @return the recordings and folders in it; none if it cannot be read
   */
  public Listing recordings(String folder) {
    return list(
        folder,
        file -> RECORDINGS.stream().anyMatch(name(file).toLowerCase(Locale.ROOT)::endsWith));
  }

  /**
   * Finds files of chains that can be imported: not the document itself, nor one that imports it.
   *
   * @param folder the folder, from that of the document, empty or ending with a slash
   * @return the files and folders in it; none if it cannot be read
   */
  public Listing chains(String folder) {
    return list(folder, file -> name(file).endsWith(ChainFiles.ENDING) && !importsBack(file));
  }

  private boolean importsBack(Path file) {
    DocumentPath path = DocumentPath.ofFile(file);
    return path.equals(document.path())
        || workspace
            .document(path)
            .filter(
                found ->
                    workspace.reachableFrom(found).stream()
                        .anyMatch(reached -> reached.path().equals(document.path())))
            .isPresent();
  }

  private Listing list(String folder, Predicate<Path> isWanted) {
    Optional<Path> where =
        document.path().file().isEmpty()
            ? Optional.empty()
            : DocumentPath.ofKey(document.file().resolve(folder)).file();
    List<Entry> entries = new ArrayList<>();
    boolean isWhole = true;
    if (where.isPresent() && Files.isDirectory(where.get())) {
      try (DirectoryStream<Path> stream = Files.newDirectoryStream(where.get())) {
        int visited = 0;
        for (Path entry : stream) {
          if (visited++ == MAX_VISITED) {
            isWhole = false;
            break;
          }
          boolean isFolder = isNamable(entry) && Files.isDirectory(entry);
          if (isFolder || (isNamable(entry) && isWanted.test(entry))) {
            entries.add(new Entry(name(entry), isFolder));
          }
        }
      } catch (IOException | DirectoryIteratorException e) {
        return new Listing(List.of(), true);
      }
    }
    entries.sort(
        Comparator.comparing((Entry entry) -> !entry.isFolder()).thenComparing(Entry::name));
    return entries.size() > MAX_NAMED
        ? new Listing(entries.subList(0, MAX_NAMED), false)
        : new Listing(entries, isWhole);
  }

  /** Hidden files are left out, and names that a text in quotes could not hold as they are. */
  private static boolean isNamable(Path entry) {
    String name = name(entry);
    return !name.startsWith(".")
        && name.chars().noneMatch(c -> c == '"' || c == '\\' || c == 0x201d || c < ' ');
  }

  private static String name(Path file) {
    Path last = file.getFileName();
    return last == null ? "" : last.toString();
  }
}
