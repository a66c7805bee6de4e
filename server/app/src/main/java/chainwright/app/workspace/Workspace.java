package chainwright.app.workspace;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * All documents as one piece of work sees them. A file is looked up once and stays the same for the
 * whole work; open documents hide the files on disk.
 */
public final class Workspace {

  /**
   * A stretch of a document.
   *
   * @param document which document
   * @param span the stretch, in offsets from the document's start
   */
  public record Located(DocumentSnapshot document, TextSpan span) {}

  private final Map<DocumentPath, DocumentSnapshot> open;
  private final List<Path> folders;
  private final DiskFiles disk;
  private final Map<DocumentPath, Optional<DocumentSnapshot>> read = new ConcurrentHashMap<>();

  Workspace(Map<DocumentPath, DocumentSnapshot> open, List<Path> folders, DiskFiles disk) {
    this.open = open;
    this.folders = folders;
    this.disk = disk;
  }

  /**
   * Returns a workspace without an editor.
   *
   * @param folders the folders worked in
   * @param reader reads what documents say
   * @return the workspace, which reads everything from disk
   */
  public static Workspace ofFolders(List<Path> folders, SectionReader reader) {
    return new Workspace(Map.of(), List.copyOf(folders), new DiskFiles(reader));
  }

  /**
   * Returns a document.
   *
   * @param path which one
   * @return its state, or empty if it is neither open nor readable
   */
  public Optional<DocumentSnapshot> document(DocumentPath path) {
    DocumentSnapshot opened = open.get(path);
    return opened != null ? Optional.of(opened) : read.computeIfAbsent(path, disk::read);
  }

  /**
   * Asks whether an editor has a document open.
   *
   * @param path which one
   * @return whether it is open, saved or not
   */
  public boolean isOpen(DocumentPath path) {
    return open.containsKey(path);
  }

  /**
   * Returns the files that a document imports, whether or not they can be read.
   *
   * @param document the document
   * @return the files, in the order of the text
   */
  public List<DocumentPath> importsOf(DocumentSnapshot document) {
    return document.file().imports().stream().map(DocumentPath::ofKey).toList();
  }

  /**
   * Returns the documents that one imports, and those that they import.
   *
   * @param document where to begin
   * @return the readable ones, nearest first, each once, without {@code document} itself
   */
  public List<DocumentSnapshot> reachableFrom(DocumentSnapshot document) {
    List<DocumentSnapshot> reached = new ArrayList<>();
    Set<DocumentPath> seen = new HashSet<>(Set.of(document.path()));
    Deque<DocumentSnapshot> next = new ArrayDeque<>(List.of(document));
    while (!next.isEmpty()) {
      for (DocumentPath path : importsOf(next.removeFirst())) {
        if (seen.add(path)) {
          document(path)
              .ifPresent(
                  found -> {
                    reached.add(found);
                    next.addLast(found);
                  });
        }
      }
    }
    return reached;
  }

  /**
   * Returns a document with those that it sees, in which its names have a meaning.
   *
   * @param document the document
   * @return it and what is reachable from it
   */
  public Project projectOf(DocumentSnapshot document) {
    List<SourceFile> files = new ArrayList<>();
    files.add(document.file());
    reachableFrom(document).forEach(reached -> files.add(reached.file()));
    return new Project(files);
  }

  /**
   * Returns every document at hand: the open ones, and the chain files under the folders.
   *
   * @return the readable ones, each once
   */
  public Collection<DocumentSnapshot> documents() {
    Set<DocumentPath> paths = new LinkedHashSet<>(open.keySet());
    ChainFiles.under(folders).forEach(file -> paths.add(DocumentPath.ofFile(file)));
    return paths.stream().flatMap(path -> document(path).stream()).toList();
  }

  /**
   * Finds where places stand.
   *
   * @param documents the documents to look in
   * @return the finder
   */
  public static Finder finderIn(Collection<DocumentSnapshot> documents) {
    IdentityHashMap<Section, Located> starts = new IdentityHashMap<>();
    for (DocumentSnapshot document : documents) {
      List<Section> sections = document.tree().sections();
      for (int i = 0; i < sections.size(); i++) {
        int start = document.tree().startOf(i);
        starts.put(sections.get(i), new Located(document, new TextSpan(start, start)));
      }
    }
    return place ->
        Optional.ofNullable(starts.get(place.section()))
            .map(at -> new Located(at.document(), place.span().plus(at.span().start())));
  }

  /** Says where a place stands. */
  @FunctionalInterface
  public interface Finder {
    /**
     * Finds a place.
     *
     * @param place the place
     * @return its document and stretch, or empty if its section is in none of the documents
     */
    Optional<Located> find(Place place);
  }
}
