package chainwright.notation.syntax;

import chainwright.notation.fault.Fault;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * Builds the tree of one section. It accepts every text: what does not fit stays in the tree as it
 * is, and a trouble says so.
 *
 * <p>A block whose opening brace is forgotten is found by {@link BodyWithoutBrace}. A forgotten
 * closing brace is found by layout: a closing brace that stands at the start of a line, less
 * indented than the line that opened the innermost block and exactly as an outer one, closes that
 * outer block.
 */
final class SectionParser extends TokenCursor {

  /** Deeper blocks than anyone writes; beyond it a brace is treated as a stray character. */
  private static final int DEEPEST_BLOCK = 64;

  private final List<Section.Trouble> troubles = new ArrayList<>();
  private final List<Integer> openIndents = new ArrayList<>();

  private SectionParser(String text) {
    super(text);
  }

  static Section parse(String text) {
    SectionParser parser = new SectionParser(text);
    List<SyntaxElement> children = new ArrayList<>();
    while (!parser.isAtEnd()) {
      parser.parseStatements(children, BodyWithoutBrace.BRACED);
      if (parser.is(SyntaxKind.RIGHT_BRACE)) {
        parser.report(
            Fault.SURPLUS_BRACE,
            "this `}` closes nothing",
            "Remove it, or add the `{` that it should close.",
            List.of(new TextEdit(parser.spanOfNext(), "")));
        parser.take(children);
      }
    }
    return new Section(text, SyntaxNode.of(SyntaxKind.SECTION, children), parser.troubles);
  }

  private void parseStatements(List<SyntaxElement> into, BodyWithoutBrace body) {
    while (!isAtEnd() && !is(SyntaxKind.RIGHT_BRACE) && body.holdsNext(this)) {
      if (is(SyntaxKind.PROSE)) {
        into.add(parseNote());
      } else if (is(SyntaxKind.CONTINUATION)) {
        report(
            Fault.CONTINUES_NOTHING,
            "`...` continues no statement",
            "`...` joins a line to the statement on the line just above; remove it, or move the"
                + " line up.",
            List.of(new TextEdit(spanOfNext(), "")));
        take(into);
      } else if (kind().isTrivia()) {
        take(into);
      } else {
        SyntaxNode statement = parseStatement();
        into.add(statement);
        checkLineEnd(statement);
      }
    }
  }

  private SyntaxNode parseNote() {
    List<SyntaxElement> children = new ArrayList<>();
    take(children);
    while (kindAhead(0) == SyntaxKind.NEWLINE
        && (kindAhead(1) == SyntaxKind.PROSE
            || (kindAhead(1) == SyntaxKind.WHITESPACE && kindAhead(2) == SyntaxKind.PROSE))) {
      while (!is(SyntaxKind.PROSE)) {
        take(children);
      }
      take(children);
    }
    return SyntaxNode.of(SyntaxKind.NOTE, children);
  }

  private SyntaxNode parseStatement() {
    List<SyntaxElement> children = new ArrayList<>();
    int indent = indentOfLine();
    if (is(SyntaxKind.LEFT_BRACE)) {
      report(
          Fault.BLOCK_OF_NOTHING,
          "this `{` belongs to no statement",
          "Write it at the end of the line of its statement, or remove it with its `}`.",
          List.of());
    } else if (!is(SyntaxKind.WORD) && !is(SyntaxKind.UNKNOWN)) {
      report(
          Fault.WORD_EXPECTED,
          "a statement begins with a word, but here is `" + tokens.get(next).text() + "`",
          "Begin the line with a stage such as `bell`; a line that goes on begins with `...`.",
          List.of());
    }
    boolean isHead = true;
    while (!isAtEnd() && !is(SyntaxKind.RIGHT_BRACE)) {
      if (is(SyntaxKind.LEFT_BRACE) && isBehindOpenText(children) && goesOnBelow()) {
        take(children);
      } else if (is(SyntaxKind.LEFT_BRACE)) {
        if (openIndents.size() < DEEPEST_BLOCK) {
          children.add(parseBlock(indent));
          break;
        }
        report(
            Fault.NESTED_TOO_DEEP,
            "blocks are nested more than " + DEEPEST_BLOCK + " deep",
            "Take a block out, for example into a preset.",
            List.of());
        take(children);
      } else if (is(SyntaxKind.NEWLINE)) {
        if (isBelow(SyntaxKind.CONTINUATION)) {
          takeUpTo(SyntaxKind.CONTINUATION, children);
          take(children);
        } else if (isBelow(SyntaxKind.LEFT_BRACE)) {
          takeUpTo(SyntaxKind.LEFT_BRACE, children);
          reportBraceBelow();
        } else {
          break;
        }
      } else if (isNumber(kind())) {
        parseQuantity(children);
      } else if (is(SyntaxKind.STRING)) {
        checkString();
        take(children);
      } else if (is(SyntaxKind.UNKNOWN)) {
        troubles.add(Stray.of(tokens, next, offset, indent, endsInBareNumber(children)));
        take(children);
      } else {
        if (!isHead && is(SyntaxKind.WORD) && isJoint(children)) {
          parseRangeEnd(children);
        } else {
          take(children);
          checkGlued();
        }
      }
      isHead = false;
    }
    if (is(SyntaxKind.NEWLINE)
        && openIndents.size() < DEEPEST_BLOCK
        && children.get(0) instanceof SyntaxToken head
        && children.get(children.size() - 1).kind() != SyntaxKind.BLOCK) {
      boolean isTop = openIndents.isEmpty();
      BodyWithoutBrace body = new BodyWithoutBrace(head.text(), indent, isTop);
      boolean hasBlock = !isTop || SectionSplitter.WORDS_WITH_BLOCK.contains(head.text());
      if (hasBlock && body.isAhead(this)) {
        children.add(parseBodyWithoutBrace(children, body));
      }
    }
    return SyntaxNode.of(SyntaxKind.STATEMENT, children);
  }

  private SyntaxNode parseBodyWithoutBrace(List<SyntaxElement> header, BodyWithoutBrace body) {
    int before = troubles.size();
    SyntaxNode line = SyntaxNode.of(SyntaxKind.STATEMENT, header);
    TextSpan span = new Statement(line, offset - line.length()).lineSpan();
    List<SyntaxElement> children = new ArrayList<>();
    int enclosing = openIndents.isEmpty() ? -1 : openIndents.get(openIndents.size() - 1);
    openIndents.add(body.indent());
    parseStatements(children, body);
    openIndents.remove(openIndents.size() - 1);
    List<TextEdit> mend = new ArrayList<>();
    mend.add(new TextEdit(new TextSpan(span.end(), span.end()), " {"));
    boolean isClosed = body.isClosedNext(this, enclosing);
    if (isClosed) {
      take(children);
    } else {
      mend.add(missingBrace(body.indent()));
    }
    troubles.add(
        before,
        new Section.Trouble(
            Fault.BLOCK_MISSING,
            span,
            "`" + body.head() + "` has no `{`",
            "Write `{` at the end of this line"
                + (isClosed ? "." : " and `}` after the last line that belongs to it."),
            mend,
            false));
    return SyntaxNode.of(SyntaxKind.BLOCK, children);
  }

  private SyntaxNode parseBlock(int indent) {
    List<SyntaxElement> children = new ArrayList<>();
    TextSpan brace = spanOfNext();
    take(children);
    openIndents.add(indent);
    parseStatements(children, BodyWithoutBrace.BRACED);
    boolean isClosed = is(SyntaxKind.RIGHT_BRACE) && !closesOuterBlock();
    openIndents.remove(openIndents.size() - 1);
    if (isClosed) {
      take(children);
    } else {
      report(
          Fault.MISSING_BRACE,
          brace,
          "this `{` is never closed",
          "Add a `}` on a line of its own after the last line of the block.",
          List.of(missingBrace(indent)));
    }
    return SyntaxNode.of(SyntaxKind.BLOCK, children);
  }

  /** The closing brace that is missing, on a line of its own. */
  private TextEdit missingBrace(int indent) {
    TextSpan end = new TextSpan(endOfContent(), endOfContent());
    return new TextEdit(end, "\n" + " ".repeat(indent) + "}");
  }

  private boolean closesOuterBlock() {
    if (!isAtLineStart()) {
      return false;
    }
    int column = offset - lineStart;
    int innermost = openIndents.size() - 1;
    return column < openIndents.get(innermost)
        && openIndents.subList(0, innermost).contains(column);
  }

  private void parseQuantity(List<SyntaxElement> into) {
    List<SyntaxElement> children = new ArrayList<>();
    take(children);
    checkGlued();
    if (is(SyntaxKind.UNIT)) {
      take(children);
    } else if (is(SyntaxKind.WORD)) {
      takeAsUnit(children);
    } else if (kindAhead(0) == SyntaxKind.WHITESPACE && isUnitAhead()) {
      take(children);
      takeAsUnit(children);
    }
    into.add(SyntaxNode.of(SyntaxKind.QUANTITY, children));
  }

  private boolean isUnitAhead() {
    return kindAhead(1) == SyntaxKind.UNIT
        || (kindAhead(1) == SyntaxKind.WORD && Unit.parse(tokens.get(next + 1).text()).isPresent());
  }

  private static boolean isBehindOpenText(List<SyntaxElement> before) {
    int last = lowEnd(before);
    return last >= 0
        && before.get(last) instanceof SyntaxToken token
        && token.kind() == SyntaxKind.STRING
        && !QuotedText.isClosed(token.text());
  }

  /** Whether the line below goes on with the statement, so that a brace here begins no block. */
  private boolean goesOnBelow() {
    int end = kindAhead(1) == SyntaxKind.WHITESPACE ? 2 : 1;
    int below = kindAhead(end + 1) == SyntaxKind.WHITESPACE ? end + 2 : end + 1;
    return kindAhead(end) == SyntaxKind.NEWLINE && kindAhead(below) == SyntaxKind.CONTINUATION;
  }

  /** Whether the next word is the {@code to} between two quantities. */
  private boolean isJoint(List<SyntaxElement> before) {
    int ahead = kindAhead(1) == SyntaxKind.WHITESPACE ? 2 : 1;
    int low = lowEnd(before);
    return tokens.get(next).text().equals("to")
        && isNumber(kindAhead(ahead))
        && low >= 0
        && before.get(low).kind() == SyntaxKind.QUANTITY;
  }

  private static int lowEnd(List<SyntaxElement> before) {
    int last = before.size() - 1;
    return last >= 0 && before.get(last).kind() == SyntaxKind.WHITESPACE ? last - 1 : last;
  }

  private void parseRangeEnd(List<SyntaxElement> children) {
    List<SyntaxElement> low = children.subList(lowEnd(children), children.size());
    List<SyntaxElement> range = new ArrayList<>(low);
    low.clear();
    take(range);
    if (is(SyntaxKind.WHITESPACE)) {
      take(range);
    }
    parseQuantity(range);
    children.add(SyntaxNode.of(SyntaxKind.RANGE, range));
  }

  private void checkString() {
    String string = tokens.get(next).text();
    if (!QuotedText.isClosed(string)) {
      int end = offset + string.length();
      boolean isMixed =
          string.length() > 1 && string.endsWith("\u201d") && !QuotedText.endsEscaped(string);
      report(
          Fault.UNTERMINATED_STRING,
          "this text has no closing quote",
          "Add `\"` where the text ends; a text cannot go on over the end of the line.",
          List.of(new TextEdit(new TextSpan(isMixed ? end - 1 : end, end), "\"")));
    }
  }

  /** Whether the next line begins with a mark that belongs to this statement. */
  private boolean isBelow(SyntaxKind mark) {
    return kindAhead(1) == mark || (kindAhead(1) == SyntaxKind.WHITESPACE && kindAhead(2) == mark);
  }

  private void reportBraceBelow() {
    int index = next;
    int end = offset;
    while (tokens.get(index - 1).kind().isTrivia()) {
      end -= tokens.get(--index).length();
    }
    String comment = text.substring(end, offset).stripTrailing();
    report(
        Fault.BRACE_ON_ITS_OWN_LINE,
        "a block begins on the line of its statement",
        "Move the `{` to the end of the line above.",
        List.of(new TextEdit(new TextSpan(end, offset + 1), " {" + comment)));
  }

  /** Reports what follows a closing brace on its line. */
  private void checkLineEnd(SyntaxNode statement) {
    SyntaxElement last = statement.children().get(statement.children().size() - 1);
    boolean isBlank = kindAhead(0) == SyntaxKind.WHITESPACE;
    SyntaxKind follows = kindAhead(isBlank ? 1 : 0);
    if (last.kind() != SyntaxKind.BLOCK
        || follows == SyntaxKind.NEWLINE
        || follows == SyntaxKind.COMMENT
        || follows == SyntaxKind.RIGHT_BRACE
        || follows == SyntaxKind.UNKNOWN
        || follows == SyntaxKind.LEFT_BRACE) {
      return;
    }
    SyntaxToken token = tokens.get(isBlank ? next + 1 : next);
    int start = isBlank ? offset + tokens.get(next).length() : offset;
    report(
        Fault.TEXT_AFTER_BRACE,
        TextSpan.ofLength(start, token.length()),
        "`" + token.text() + "` stands behind a `}`",
        "Begin a line with it; what belongs to the statement stands before its `{`.",
        List.of(new TextEdit(new TextSpan(offset, start), "\n" + " ".repeat(indentOfLine()))));
  }

  private void checkGlued() {
    SyntaxKind before = tokens.get(next - 1).kind();
    if (isNumber(kindAhead(0)) && (before == SyntaxKind.WORD || isNumber(before))) {
      troubles.add(Stray.glued(tokens.get(next - 1), tokens.get(next), offset));
    }
  }

  private static boolean endsInBareNumber(List<SyntaxElement> before) {
    int last = lowEnd(before);
    return last >= 0
        && before.get(last) instanceof SyntaxNode quantity
        && quantity.kind() == SyntaxKind.QUANTITY
        && quantity.children().size() == 1;
  }

  private static boolean isNumber(SyntaxKind kind) {
    return kind == SyntaxKind.NUMBER
        || kind == SyntaxKind.COLON_NUMBER
        || kind == SyntaxKind.FRACTION;
  }

  private void report(Fault fault, String what, String remedy, List<TextEdit> mend) {
    report(fault, spanOfNext(), what, remedy, mend);
  }

  private void report(Fault fault, TextSpan span, String what, String remedy, List<TextEdit> mend) {
    troubles.add(new Section.Trouble(fault, span, what, remedy, mend, false));
  }
}
