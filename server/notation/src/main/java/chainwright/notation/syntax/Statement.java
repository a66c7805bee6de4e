package chainwright.notation.syntax;

import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A view of a statement in the tree: its first word, what follows it, and its block.
 *
 * @param node the node, of kind {@link SyntaxKind#STATEMENT}
 * @param offset where it begins, from the section's start
 */
public record Statement(SyntaxNode node, int offset) {

  /**
   * Returns the first word.
   *
   * @return the word, or empty if the statement begins with something else
   */
  public Optional<Item.Word> head() {
    if (node.children().get(0) instanceof SyntaxToken token && token.kind() == SyntaxKind.WORD) {
      return Optional.of(new Item.Word(token.text(), TextSpan.ofLength(offset, token.length())));
    }
    return Optional.empty();
  }

  /**
   * Returns what follows the first word, up to the block or the end.
   *
   * @return the items, in the order of the text
   */
  public List<Item> items() {
    List<Item> items = new ArrayList<>();
    int at = offset;
    boolean isFirst = true;
    for (SyntaxElement child : node.children()) {
      boolean isHead = isFirst && child.kind() == SyntaxKind.WORD;
      isFirst = false;
      if (!isHead) {
        Optional<Item> item = item(child, at);
        if (item.isPresent()) {
          items.add(item.get());
        }
      }
      at += child.length();
    }
    return items;
  }

  /**
   * Returns the block.
   *
   * @return the block, or empty if the statement has none
   */
  public Optional<Block> block() {
    int at = offset;
    for (SyntaxElement child : node.children()) {
      if (child instanceof SyntaxNode inner && inner.kind() == SyntaxKind.BLOCK) {
        return Optional.of(new Block(inner, at));
      }
      at += child.length();
    }
    return Optional.empty();
  }

  /**
   * Returns the whole stretch, with the block.
   *
   * @return the span, from the section's start, without blanks at its end
   */
  public TextSpan span() {
    return new TextSpan(
        offset, Math.max(offset, block().map(b -> b.span().end()).orElse(lineEnd())));
  }

  /**
   * Returns the stretch before the block.
   *
   * @return the span from the first word to the last item
   */
  public TextSpan lineSpan() {
    return new TextSpan(offset, Math.max(offset, lineEnd()));
  }

  private int lineEnd() {
    int at = offset;
    int end = offset;
    for (SyntaxElement child : node.children()) {
      at += child.length();
      if (child.kind() == SyntaxKind.BLOCK) {
        break;
      }
      if (!child.kind().isTrivia()) {
        end = at;
      }
    }
    return end;
  }

  private static Optional<Item> item(SyntaxElement element, int at) {
    TextSpan span = TextSpan.ofLength(at, element.length());
    return switch (element.kind()) {
      case WORD, UNIT -> Optional.of(new Item.Word(((SyntaxToken) element).text(), span));
      case STRING -> Optional.of(new Item.Text(unquoted(((SyntaxToken) element).text()), span));
      case QUANTITY -> Optional.of(amount((SyntaxNode) element, at));
      case RANGE -> Optional.of(range((SyntaxNode) element, at));
      case EQUALS, UNKNOWN, LEFT_BRACE ->
          Optional.of(new Item.Mark(((SyntaxToken) element).text(), span));
      case NUMBER,
          COLON_NUMBER,
          FRACTION,
          RIGHT_BRACE,
          CONTINUATION,
          PROSE,
          COMMENT,
          WHITESPACE,
          NEWLINE,
          SECTION,
          STATEMENT,
          BLOCK,
          NOTE ->
          Optional.empty();
    };
  }

  private static Item.Amount amount(SyntaxNode quantity, int at) {
    SyntaxToken number = (SyntaxToken) quantity.children().get(0);
    TextSpan numberSpan = TextSpan.ofLength(at, number.length());
    int unitEnd = at + quantity.length();
    if (quantity.children().size() == 1) {
      return new Item.Amount(
          number.kind(),
          number.text(),
          numberSpan,
          Optional.empty(),
          new TextSpan(unitEnd, unitEnd));
    }
    SyntaxToken unit = (SyntaxToken) quantity.children().get(quantity.children().size() - 1);
    return new Item.Amount(
        number.kind(),
        number.text(),
        numberSpan,
        Optional.of(unit.text()),
        new TextSpan(unitEnd - unit.length(), unitEnd));
  }

  private static Item.Range range(SyntaxNode range, int at) {
    SyntaxNode low = (SyntaxNode) range.children().get(0);
    SyntaxNode high = (SyntaxNode) range.children().get(range.children().size() - 1);
    return new Item.Range(amount(low, at), amount(high, at + range.length() - high.length()));
  }

  private static String unquoted(String quoted) {
    int end = quoted.length();
    if (QuotedText.isClosed(quoted)) {
      end--;
    }
    String inner = quoted.substring(1, end);
    if (inner.indexOf('\\') < 0) {
      return inner;
    }
    StringBuilder plain = new StringBuilder(inner.length());
    for (int i = 0; i < inner.length(); i++) {
      if (inner.charAt(i) == '\\' && i + 1 < inner.length()) {
        i++;
      }
      plain.append(inner.charAt(i));
    }
    return plain.toString();
  }
}
