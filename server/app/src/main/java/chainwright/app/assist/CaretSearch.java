package chainwright.app.assist;

import chainwright.app.assist.WrittenLine.Surroundings;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxToken;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds the caret in the tree of a section. It walks down the blocks, so that its cost is that of
 * the statements in the blocks around the caret, however long they are.
 */
final class CaretSearch {

  /** A token, and where it stands. */
  private record Leaf(SyntaxKind kind, String text, int start) {
    int end() {
      return start + text.length();
    }
  }

  private final String text;
  private final Block root;
  private final int caret;
  private final List<String> blocks = new ArrayList<>();
  private Optional<Statement> top = Optional.empty();

  CaretSearch(Section section, int caret) {
    this.text = section.text();
    this.root = Block.of(section);
    this.caret = caret;
  }

  Optional<WrittenLine> search() {
    Block block = root;
    while (true) {
      Scan scan = Scan.of(block, caret);
      Optional<Statement> found = scan.statement();
      if (found.isEmpty()) {
        return scan.isInMark() ? Optional.empty() : blank(scan);
      }
      Optional<Block> inner = found.get().block();
      if (inner.isEmpty() || caret <= inner.get().offset()) {
        return inStatement(found.get(), scan);
      }
      if (!isInside(inner.get())) {
        return Optional.empty();
      }
      top = top.or(() -> found);
      blocks.add(0, found.get().head().map(Item.Word::text).orElse(""));
      block = inner.get();
    }
  }

  private boolean isInside(Block block) {
    List<SyntaxElement> children = block.node().children();
    boolean isClosed = children.get(children.size() - 1).kind() == SyntaxKind.RIGHT_BRACE;
    int end = block.offset() + block.node().length();
    return isClosed ? caret < end : caret <= end;
  }

  /** A place without a statement, where one can be begun unless something stands on the line. */
  private Optional<WrittenLine> blank(Scan scan) {
    String before = text.substring(lineStart(), caret).stripTrailing();
    boolean isFree = before.isBlank() || before.endsWith("{");
    return isFree && isRestFree(caret)
        ? Optional.of(
            new WrittenLine(
                around(scan),
                "",
                List.of(),
                List.of(),
                new TextSpan(caret, caret),
                caret,
                "",
                false,
                false,
                "",
                true,
                false))
        : Optional.empty();
  }

  private Optional<WrittenLine> inStatement(Statement statement, Scan scan) {
    boolean isBeforeContinuation =
        statement.offset() < lineStart() && text.substring(lineStart(), caret).isBlank();
    if (isBeforeContinuation) {
      return Optional.empty();
    }
    List<Leaf> leaves = new ArrayList<>();
    collect(statement.node(), statement.offset(), leaves);
    Optional<Leaf> touched =
        leaves.stream()
            .filter(leaf -> leaf.start() < caret && caret <= leaf.end())
            .filter(
                leaf -> leaf.kind() != SyntaxKind.WHITESPACE && leaf.kind() != SyntaxKind.NEWLINE)
            .findFirst();
    if (touched.isEmpty()) {
      return word(statement, scan, caret, caret);
    }
    Leaf leaf = touched.get();
    return switch (leaf.kind()) {
      case STRING -> quoted(statement, scan, leaf);
      case WORD, UNIT, NUMBER, COLON_NUMBER, FRACTION ->
          word(statement, scan, leaf.start(), leaf.end());
      case UNKNOWN -> word(statement, scan, startOfUnknown(leaves, leaf), leaf.end());
      case CONTINUATION, EQUALS ->
          caret == leaf.end() ? word(statement, scan, caret, caret) : Optional.empty();
      case COMMENT,
          LEFT_BRACE,
          RIGHT_BRACE,
          PROSE,
          WHITESPACE,
          NEWLINE,
          SECTION,
          STATEMENT,
          QUANTITY,
          RANGE,
          BLOCK,
          NOTE ->
          Optional.empty();
    };
  }

  /** A sign, a point, a colon or a slash that waits for more belongs to the word it touches. */
  private static int startOfUnknown(List<Leaf> leaves, Leaf unknown) {
    int index = leaves.indexOf(unknown);
    boolean isTouching =
        index > 0
            && leaves.get(index - 1).kind() != SyntaxKind.WHITESPACE
            && leaves.get(index - 1).kind() != SyntaxKind.NEWLINE;
    return isTouching ? leaves.get(index - 1).start() : unknown.start();
  }

  private Optional<WrittenLine> quoted(Statement statement, Scan scan, Leaf string) {
    boolean isOpen =
        string.text().length() == 1
            || "\"\u201d".indexOf(string.text().charAt(string.text().length() - 1)) < 0;
    if (caret == string.end() && !isOpen) {
      return Optional.empty();
    }
    int start = string.start() + 1;
    int end = isOpen ? string.end() : string.end() - 1;
    return Optional.of(
        new WrittenLine(
            around(scan),
            statement.head().map(Item.Word::text).orElse(""),
            before(statement, string.start()),
            after(statement, string.end()),
            new TextSpan(start, caret),
            end,
            text.substring(start, end),
            true,
            isOpen,
            "",
            isRestFree(end),
            false));
  }

  private Optional<WrittenLine> word(Statement statement, Scan scan, int from, int to) {
    boolean isHead = from == statement.offset();
    if (!isHead && statement.head().isEmpty()) {
      return Optional.empty();
    }
    if (isHead) {
      int end = statement.head().map(head -> head.span().end()).orElse(to);
      return Optional.of(word(statement, scan, "", new TextSpan(from, Math.max(to, end))));
    }
    return replaced(statement, new TextSpan(from, to))
        .map(span -> word(statement, scan, statement.head().map(Item.Word::text).orElse(""), span));
  }

  private WrittenLine word(Statement statement, Scan scan, String head, TextSpan word) {
    boolean isInsertion = word.length() == 0 && !head.isEmpty();
    boolean isGlued =
        isInsertion && word.end() < text.length() && !isBlankOrEnd(text.charAt(word.end()));
    List<Item> after = after(statement, word.end());
    return new WrittenLine(
        around(scan),
        head,
        head.isEmpty() ? List.of() : before(statement, word.start()),
        after,
        new TextSpan(word.start(), caret),
        word.end(),
        text.substring(word.start(), word.end()),
        false,
        false,
        isGlued ? " " : "",
        after.isEmpty() && isRestFree(word.end()),
        !isInsertion && word.start() > 0 && Character.isDigit(text.charAt(word.start() - 1)));
  }

  /**
   * Widens a word to what has to be replaced with it: a number goes with its unit, the lower end of
   * a range with the whole range. Nothing can be written between the ends of a range.
   */
  private Optional<TextSpan> replaced(Statement statement, TextSpan word) {
    for (Item item : statement.items()) {
      TextSpan span = item.span();
      if (span.start() < caret && caret <= span.end()) {
        if (item instanceof Item.Amount amount) {
          return Optional.of(inAmount(amount, word));
        }
        if (item instanceof Item.Range range) {
          boolean isLow = caret <= range.low().span().end();
          boolean isLowNumber = isLow && caret <= range.low().numberSpan().end();
          if (isLowNumber) {
            return Optional.of(span);
          }
          return isLow
              ? Optional.of(inAmount(range.low(), word))
              : Optional.of(range.high())
                  .filter(high -> caret > high.span().start())
                  .map(high -> inAmount(high, word));
        }
      }
    }
    return Optional.of(word);
  }

  private static TextSpan inAmount(Item.Amount amount, TextSpan word) {
    return new TextSpan(word.start(), Math.max(word.end(), amount.span().end()));
  }

  private Surroundings around(Scan scan) {
    return new Surroundings(
        blocks,
        top.map(CaretSearch::name).orElse(""),
        top.flatMap(CaretSearch::source),
        scan.above(),
        scan.below(),
        scan.previous().map(Statement::items).orElse(List.of()));
  }

  private static Optional<String> source(Statement definition) {
    return definition
        .block()
        .flatMap(
            block ->
                block.node().children().stream()
                    .filter(child -> child.kind() == SyntaxKind.STATEMENT)
                    .map(SyntaxNode.class::cast)
                    .filter(node -> Scan.firstWord(node).equals("source"))
                    .findFirst())
        .map(node -> name(new Statement(node, 0)))
        .filter(name -> !name.isEmpty());
  }

  /** The word behind the first one. */
  private static String name(Statement statement) {
    return statement.items().stream()
        .findFirst()
        .filter(Item.Word.class::isInstance)
        .map(item -> ((Item.Word) item).text())
        .orElse("");
  }

  /** The items before a place, read without what follows, which may belong to another word. */
  private List<Item> before(Statement statement, int end) {
    Section alone = SyntaxTree.parse(text.substring(statement.offset(), end)).sections().get(0);
    return Block.of(alone).members().stream()
        .filter(Block.Line.class::isInstance)
        .findFirst()
        .map(member -> ((Block.Line) member).statement().items())
        .orElse(List.of());
  }

  private static List<Item> after(Statement statement, int start) {
    return statement.items().stream().filter(item -> item.span().start() >= start).toList();
  }

  private void collect(SyntaxNode node, int start, List<Leaf> into) {
    int at = start;
    for (SyntaxElement child : node.children()) {
      if (child instanceof SyntaxToken token) {
        into.add(new Leaf(token.kind(), token.text(), at));
      } else if (child instanceof SyntaxNode inner && inner.kind() != SyntaxKind.BLOCK) {
        collect(inner, at, into);
      }
      at += child.length();
    }
  }

  private int lineStart() {
    int start = caret;
    while (start > 0 && "\r\n".indexOf(text.charAt(start - 1)) < 0) {
      start--;
    }
    return start;
  }

  /** Whether nothing but a comment or a closing brace follows on the line. */
  private boolean isRestFree(int from) {
    int at = from;
    while (at < text.length() && isBlank(text.charAt(at))) {
      at++;
    }
    return at == text.length() || "\r\n#}".indexOf(text.charAt(at)) >= 0;
  }

  private static boolean isBlankOrEnd(char c) {
    return isBlank(c) || c == '\r' || c == '\n';
  }

  private static boolean isBlank(char c) {
    return c != '\r' && c != '\n' && (Character.isWhitespace(c) || Character.isSpaceChar(c));
  }
}
