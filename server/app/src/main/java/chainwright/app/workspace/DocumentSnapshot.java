package chainwright.app.workspace;

import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.LineIndex;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One state of one document. Every edit makes a state that differs from all before it, even one
 * that leaves the text as it was, since trees are compared by identity.
 *
 * @param uri its address, spelt as the editor spelt it
 * @param path which file it is
 * @param version the editor's number of this state; empty for a file read from disk
 * @param file its text, its tree and what it says
 * @param lines its lines
 */
public record DocumentSnapshot(
    String uri, DocumentPath path, Optional<Integer> version, SourceFile file, LineIndex lines) {

  /**
   * Makes the first state of a document that an editor has opened.
   *
   * @param uri its address as the editor spells it
   * @param version the editor's number of this state
   * @param text its text
   * @param reader reads what it says
   * @return the state
   */
  public static DocumentSnapshot ofEditor(
      String uri, int version, String text, SectionReader reader) {
    DocumentPath path = DocumentPath.ofUri(uri);
    return new DocumentSnapshot(
        uri,
        path,
        Optional.of(version),
        SourceFile.of(path.key(), text, reader),
        LineIndex.of(text));
  }

  /**
   * Makes the state of a file on disk.
   *
   * @param path which file
   * @param text its text
   * @param reader reads what it says
   * @return the state
   */
  public static DocumentSnapshot ofDisk(DocumentPath path, String text, SectionReader reader) {
    return new DocumentSnapshot(
        path.toUri(),
        path,
        Optional.empty(),
        SourceFile.of(path.key(), text, reader),
        LineIndex.of(text));
  }

  /** Two states are never equal, since their trees are not. */
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }

  /**
   * Returns the tree.
   *
   * @return the lossless tree of the text
   */
  public SyntaxTree tree() {
    return file.tree();
  }

  /**
   * Returns the text.
   *
   * @return every character of it
   */
  public String text() {
    return file.tree().text();
  }

  /**
   * Returns the conversion of this text's places.
   *
   * @param encoding the editor's units
   * @return the conversion
   */
  public Positions positions(PositionEncoding encoding) {
    return new Positions(text(), lines, encoding);
  }

  /**
   * Returns the state after an editor's changes. Each counts in the text that the one before it
   * left.
   *
   * @param newVersion the editor's number of the new state
   * @param changes the changes, in the order sent
   * @param encoding the editor's units
   * @return the new state
   */
  public DocumentSnapshot withChanges(
      int newVersion, List<TextChange> changes, PositionEncoding encoding) {
    StringBuilder builder = new StringBuilder(text());
    LineIndex index = lines;
    boolean isFresh = true;
    for (TextChange change : changes) {
      if (change.range().isEmpty()) {
        builder.setLength(0);
        builder.append(change.text());
        isFresh = false;
        continue;
      }
      String before = isFresh ? text() : builder.toString();
      Positions positions = new Positions(before, isFresh ? index : LineIndex.of(before), encoding);
      int start = positions.offsetOf(change.range().get().start());
      int end = positions.offsetOf(change.range().get().end());
      builder.replace(Math.min(start, end), Math.max(start, end), change.text());
      isFresh = false;
    }
    String after = builder.toString();
    return new DocumentSnapshot(
        uri,
        path,
        Optional.of(newVersion),
        file.withTree(tree().withText(after)),
        LineIndex.of(after));
  }

  /**
   * Returns the state of the same file with another text on disk.
   *
   * @param newText the text
   * @return the new state; sections whose text is the same are kept
   */
  DocumentSnapshot withDiskText(String newText) {
    return new DocumentSnapshot(
        uri,
        path,
        Optional.empty(),
        file.withTree(tree().withText(newText)),
        LineIndex.of(newText));
  }
}
