package chainwright.app.workspace;

import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.LineIndex;
import java.util.List;
import java.util.Optional;

/**
 * One state of one document. Every edit makes a state that differs from all before it, even one
 * that leaves the text as it was, since trees are compared by identity.
 *
 * @param uri its address, spelt as the editor spelt it
 * @param path which file it is
 * @param version the editor's number of this state; empty for a file read from disk
 * @param tree its text and tree
 * @param lines its lines
 */
public record DocumentSnapshot(
    String uri, DocumentPath path, Optional<Integer> version, SyntaxTree tree, LineIndex lines) {

  /**
   * Makes the first state of a document that an editor has opened.
   *
   * @param uri its address as the editor spells it
   * @param version the editor's number of this state
   * @param text its text
   * @return the state
   */
  public static DocumentSnapshot ofEditor(String uri, int version, String text) {
    return new DocumentSnapshot(
        uri,
        DocumentPath.ofUri(uri),
        Optional.of(version),
        SyntaxTree.parse(text),
        LineIndex.of(text));
  }

  /**
   * Makes the state of a file on disk.
   *
   * @param path which file
   * @param text its text
   * @return the state
   */
  public static DocumentSnapshot ofDisk(DocumentPath path, String text) {
    return new DocumentSnapshot(
        path.toUri(), path, Optional.empty(), SyntaxTree.parse(text), LineIndex.of(text));
  }

  /**
   * Returns the text.
   *
   * @return every character of it
   */
  public String text() {
    return tree.text();
  }

  /**
   * Returns the conversion of this text's places.
   *
   * @param encoding the editor's units
   * @return the conversion
   */
  public Positions positions(PositionEncoding encoding) {
    return new Positions(tree.text(), lines, encoding);
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
        uri, path, Optional.of(newVersion), tree.withText(after), LineIndex.of(after));
  }

  /**
   * Returns the state of the same file with another text on disk.
   *
   * @param newText the text
   * @return the new state; sections whose text is the same are kept
   */
  DocumentSnapshot withDiskText(String newText) {
    return new DocumentSnapshot(
        uri, path, Optional.empty(), tree.withText(newText), LineIndex.of(newText));
  }
}
