package chainwright.app.workspace;

import chainwright.notation.lowering.SectionReader;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The documents an editor has open. One thread writes; any thread reads the newest states.
 *
 * <p>Readers see either the state before an edit or the one after it, never one between.
 */
public final class Documents {

  private final SectionReader reader;
  private final DiskFiles disk;
  private volatile Map<DocumentPath, DocumentSnapshot> open = Map.of();
  private volatile List<Path> folders = List.of();

  /**
   * Begins without a document.
   *
   * @param reader reads what documents say
   */
  public Documents(SectionReader reader) {
    this.reader = reader;
    this.disk = new DiskFiles(reader);
  }

  /**
   * Takes a document from an editor.
   *
   * @param uri its address as the editor spells it
   * @param version the editor's number of its state
   * @param text its text
   * @return the state
   */
  public DocumentSnapshot open(String uri, int version, String text) {
    DocumentSnapshot document = DocumentSnapshot.ofEditor(uri, version, text, reader);
    put(document);
    return document;
  }

  /**
   * Edits an open document.
   *
   * @param uri its address, in any spelling
   * @param version the editor's number of the new state
   * @param changes the changes, each counted in the text that the one before it left
   * @param encoding the editor's units
   * @return the new state, or empty if no such document is open
   */
  public Optional<DocumentSnapshot> change(
      String uri, int version, List<TextChange> changes, PositionEncoding encoding) {
    DocumentSnapshot before = open.get(DocumentPath.ofUri(uri));
    if (before == null) {
      return Optional.empty();
    }
    DocumentSnapshot after = before.withChanges(version, changes, encoding);
    put(after);
    return Optional.of(after);
  }

  /**
   * Gives a document back to the disk.
   *
   * @param uri its address, in any spelling
   * @return its last state, or empty if it was not open
   */
  public Optional<DocumentSnapshot> close(String uri) {
    Map<DocumentPath, DocumentSnapshot> next = new HashMap<>(open);
    DocumentSnapshot last = next.remove(DocumentPath.ofUri(uri));
    open = Map.copyOf(next);
    return Optional.ofNullable(last);
  }

  /**
   * Sets the folders in which the editor works.
   *
   * @param newFolders the folders
   */
  public void setFolders(List<Path> newFolders) {
    folders = List.copyOf(newFolders);
  }

  /**
   * Returns the newest states of the open documents.
   *
   * @return the states, in no particular order
   */
  public Collection<DocumentSnapshot> opened() {
    return open.values();
  }

  /**
   * Asks whether a state is still the newest. A file that is not open in the editor always is.
   *
   * @param document the state
   * @return whether no edit has come since
   */
  public boolean isNewest(DocumentSnapshot document) {
    return document.version().isEmpty() || document.equals(open.get(document.path()));
  }

  /**
   * Returns what one piece of work sees: the newest state of everything, which later edits do not
   * touch.
   *
   * @return the state of all documents
   */
  public Workspace workspace() {
    return new Workspace(open, folders, disk);
  }

  private void put(DocumentSnapshot document) {
    Map<DocumentPath, DocumentSnapshot> next = new HashMap<>(open);
    next.put(document.path(), document);
    open = Map.copyOf(next);
  }
}
