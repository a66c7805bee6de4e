package chainwright.app.assist;

import java.util.ArrayList;
import java.util.List;

/**
 * A text with stops, which the writer visits one after the other.
 *
 * @param pieces the text in its order, lines parted by line feeds and indented by tabs
 */
public record Snippet(List<Piece> pieces) {

  /** A part of the text. */
  public sealed interface Piece {}

  /**
   * What stays as it is.
   *
   * @param text the characters
   */
  public record Fixed(String text) implements Piece {}

  /**
   * A stop.
   *
   * @param text what stands there until something else is written
   */
  public record Stop(String text) implements Piece {}

  /**
   * What was written at an earlier stop, again.
   *
   * @param stop which one, the first is 1
   */
  public record Same(int stop) implements Piece {}

  /** Where the writer goes on at the end. */
  public record End() implements Piece {}

  /**
   * Copies the pieces.
   *
   * @param pieces the text
   */
  public Snippet {
    pieces = List.copyOf(pieces);
  }

  static Snippet of() {
    return new Snippet(List.of());
  }

  Snippet fixed(String text) {
    return plus(new Fixed(text));
  }

  Snippet stop(String text) {
    return plus(new Stop(text));
  }

  Snippet same(int stop) {
    return plus(new Same(stop));
  }

  Snippet end() {
    return plus(new End());
  }

  /** Opens a block on the line, in which the writer goes on. */
  Snippet block() {
    return fixed(" {\n\t").end().fixed("\n}");
  }

  private Snippet plus(Piece piece) {
    List<Piece> more = new ArrayList<>(pieces);
    more.add(piece);
    return new Snippet(more);
  }
}
