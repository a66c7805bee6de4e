package chainwright.notation.format;

import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxToken;
import chainwright.notation.text.LineIndex;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays out one section: walks its tree and says for every token how it is spelt and what stands
 * before it. Lines are never joined; they are parted after <code>{</code> and before <code>}</code>
 * unless the whole block stands on one line.
 */
final class SectionLayout {

  private static final int STEP = 2;
  private static final String NOTE_WORD = "note";

  private final List<Piece> pieces = new ArrayList<>();
  private final boolean[] isBroken;
  private int at;
  private int line;
  private int newlines;

  /** The indentation of the line that is being laid out. */
  private int lineIndent;

  /** The indentation of a statement that would begin here. */
  private int memberIndent;

  private boolean isBlankSeen;
  private boolean isAfterBrace;

  private SectionLayout(Section section) {
    if (section.troubles().isEmpty()) {
      isBroken = new boolean[0];
      return;
    }
    LineIndex lines = LineIndex.of(section.text());
    isBroken = new boolean[lines.lineCount()];
    for (Section.Trouble trouble : section.troubles()) {
      int last = lines.lineAt(trouble.span().end());
      for (int i = lines.lineAt(trouble.span().start()); i <= last; i++) {
        isBroken[i] = true;
      }
    }
  }

  /** Returns the pieces of a section, in the order of the text. */
  static List<Piece> of(Section section) {
    SectionLayout layout = new SectionLayout(section);
    layout.members(section.root().children(), 0, false);
    layout.indentComments(section.text());
    return layout.pieces;
  }

  private void members(List<SyntaxElement> children, int indent, boolean isInline) {
    List<Row> run = new ArrayList<>();
    boolean isAfterStatement = false;
    for (SyntaxElement child : children) {
      memberIndent = indent;
      if (child instanceof SyntaxToken token) {
        emit(token, Spelling.token(token), false, indent);
      } else if (child instanceof SyntaxNode node && node.kind() == SyntaxKind.NOTE) {
        emitAll(node, isAfterStatement ? indent + STEP : indent);
      } else if (child instanceof SyntaxNode node) {
        boolean isNote = isNote(node);
        List<Row> rows =
            statement(node, isNote && isAfterStatement ? indent + STEP : indent, isInline);
        addToRun(run, rows, !isNote && !isInline && !hasBlock(node), isNote);
        isAfterStatement |= !isNote;
      }
    }
    flush(run);
  }

  /** The first line of a plain statement shares columns with its neighbours; others stand alone. */
  private void addToRun(List<Row> run, List<Row> rows, boolean isPlain, boolean isNote) {
    if (isBlankSeen || !(isPlain || isNote)) {
      flush(run);
      isBlankSeen = false;
    }
    for (Row row : rows) {
      if (isPlain && !row.isContinuation()) {
        run.add(row);
      } else {
        Columns.spread(row);
      }
    }
  }

  private static void flush(List<Row> run) {
    if (!run.isEmpty()) {
      Columns.align(run);
      run.clear();
    }
  }

  private void emitAll(SyntaxNode note, int indent) {
    for (SyntaxElement child : note.children()) {
      SyntaxToken token = (SyntaxToken) child;
      emit(token, Spelling.token(token), false, indent);
    }
  }

  /** Lays out a statement and returns its lines, without those that hold an error. */
  private List<Row> statement(SyntaxNode node, int indent, boolean isInline) {
    List<Row> rows = new ArrayList<>(1);
    List<Row.Part> parts = new ArrayList<>();
    int first = pieces.size();
    int base = indent;
    for (SyntaxElement child : node.children()) {
      boolean isHead = pieces.size() == first;
      if (isHead) {
        part(child, parts, !isInline, indent);
        parts.clear();
        base = lineIndent;
      } else if (child.kind() == SyntaxKind.BLOCK) {
        block((SyntaxNode) child, base);
      } else if (child instanceof SyntaxToken token && token.kind().isTrivia()) {
        emit(token, Spelling.token(token), false, base + STEP);
        if (token.kind() == SyntaxKind.CONTINUATION) {
          addRow(rows, first, parts);
          first = pieces.size() - 1;
        }
      } else {
        part(child, parts, false, base + STEP);
      }
    }
    addRow(rows, first, parts);
    return rows;
  }

  private void addRow(List<Row> rows, int first, List<Row.Part> parts) {
    Piece head = pieces.get(first);
    if (!head.isKept) {
      rows.add(Row.of(head, parts));
    }
    parts.clear();
  }

  private void part(SyntaxElement element, List<Row.Part> parts, boolean isBreak, int indent) {
    int first = pieces.size();
    Row.PartKind kind = Row.PartKind.VALUE;
    String shape = "";
    if (element instanceof SyntaxToken token) {
      emit(token, Spelling.token(token), isBreak, indent);
      kind =
          token.kind() == SyntaxKind.WORD
              ? Row.PartKind.WORD
              : token.kind() == SyntaxKind.STRING ? Row.PartKind.TEXT : Row.PartKind.MARK;
      shape = kind == Row.PartKind.WORD ? token.text() : "text";
    } else if (element.kind() == SyntaxKind.QUANTITY) {
      SyntaxNode quantity = (SyntaxNode) element;
      shape = Spelling.shape(quantity);
      quantity(quantity, Spelling.amount(quantity), isBreak, indent);
    } else if (element.kind() == SyntaxKind.RANGE) {
      SyntaxNode range = (SyntaxNode) element;
      shape = "range";
      range(range, isBreak, indent);
    } else {
      block((SyntaxNode) element, indent);
    }
    int width = -1;
    for (int i = first; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      width += piece.blanks() + Columns.width(piece.text);
    }
    parts.add(new Row.Part(kind, shape, pieces.get(first), width));
  }

  private void range(SyntaxNode range, boolean isBreak, int indent) {
    SyntaxNode low = (SyntaxNode) range.children().get(0);
    SyntaxNode high = (SyntaxNode) range.children().get(range.children().size() - 1);
    List<Spelling.Amount> ends = Spelling.range(low, high);
    for (SyntaxElement child : range.children()) {
      if (child instanceof SyntaxToken token) {
        emit(token, token.text(), false, indent);
      } else {
        quantity(
            (SyntaxNode) child, ends.get(child == low ? 0 : 1), child == low && isBreak, indent);
      }
    }
  }

  private void quantity(SyntaxNode quantity, Spelling.Amount amount, boolean isBreak, int indent) {
    boolean isNumber = true;
    for (SyntaxElement child : quantity.children()) {
      SyntaxToken token = (SyntaxToken) child;
      if (isNumber) {
        emit(token, amount.number(), isBreak, indent);
        isNumber = false;
      } else if (token.kind() == SyntaxKind.UNIT) {
        emit(token, amount.unit(), false, indent);
        if (amount.isGlued() || amount.unit().isEmpty()) {
          pieces.get(pieces.size() - 1).setBlanks(0);
        }
      } else {
        emit(token, "", false, indent);
      }
    }
  }

  private void block(SyntaxNode block, int outer) {
    List<SyntaxElement> children = block.children();
    int outerMembers = memberIndent;
    boolean isOpened = children.get(0).kind() == SyntaxKind.LEFT_BRACE;
    memberIndent = outer + STEP;
    if (isOpened) {
      emit((SyntaxToken) children.get(0), "{", false, outer);
      isAfterBrace = true;
    }
    int first = isOpened ? 1 : 0;
    int last = children.size() - 1;
    boolean isClosed = last > 0 && children.get(last).kind() == SyntaxKind.RIGHT_BRACE;
    boolean isInline = isClosed && isInline(block);
    members(children.subList(first, isClosed ? last : last + 1), outer + STEP, isInline);
    memberIndent = outerMembers;
    if (isClosed) {
      SyntaxToken close = (SyntaxToken) children.get(last);
      emit(close, close.text(), !isInline, outer);
    }
  }

  /** Whether a block of at most one statement was written on one line, so that it stays there. */
  private static boolean isInline(SyntaxNode block) {
    int statements = 0;
    for (SyntaxElement child : block.children()) {
      if (child.kind() == SyntaxKind.NEWLINE) {
        return false;
      }
      if (child instanceof SyntaxNode statement) {
        for (SyntaxElement inner : statement.children()) {
          if (inner.kind() == SyntaxKind.NEWLINE
              || (inner instanceof SyntaxNode node
                  && inner.kind() == SyntaxKind.BLOCK
                  && !isInline(node))) {
            return false;
          }
        }
        statements++;
      }
    }
    return statements <= 1;
  }

  private static boolean isNote(SyntaxNode statement) {
    return statement.children().get(0) instanceof SyntaxToken token
        && token.kind() == SyntaxKind.WORD
        && token.text().equals(NOTE_WORD);
  }

  private static boolean hasBlock(SyntaxNode statement) {
    return statement.children().get(statement.children().size() - 1).kind() == SyntaxKind.BLOCK;
  }

  private void emit(SyntaxToken token, String text, boolean isBreak, int indent) {
    if (token.kind() == SyntaxKind.NEWLINE) {
      newlines++;
      line++;
    } else if (token.kind() != SyntaxKind.WHITESPACE) {
      pieces.add(piece(token, text, isBreak, indent));
      newlines = 0;
      isAfterBrace = false;
    }
    at += token.length();
  }

  private Piece piece(SyntaxToken token, String text, boolean isBreak, int indent) {
    boolean isKept = isBroken.length > 0 && isBroken[line];
    boolean isFirst = pieces.isEmpty();
    int breaks = Math.min(2, newlines);
    if (isFirst) {
      breaks = 0;
    } else if (breaks == 2 && (isAfterBrace || token.kind() == SyntaxKind.RIGHT_BRACE)) {
      breaks = 1;
    } else if (breaks == 0 && isBreak && !isKept && !Section.isBegunBy(text)) {
      breaks = 1;
    }
    boolean isLineStart = isFirst || breaks > 0;
    isBlankSeen |= breaks == 2;
    int blanks = 1;
    if (isLineStart) {
      lineIndent = indent;
      blanks = indent;
    } else if (token.kind() == SyntaxKind.COMMENT) {
      blanks = 2;
    }
    return new Piece(
        at,
        token.length(),
        token.kind(),
        isKept ? token.text() : text,
        breaks,
        isLineStart,
        isKept,
        memberIndent,
        blanks);
  }

  /**
   * Gives a comment on a line of its own the indentation of what follows. One that stands at the
   * margin after a block that lacks its brace stays there: it belongs to what comes next.
   */
  private void indentComments(String text) {
    int below = -1;
    for (int i = pieces.size() - 1; i >= 0; i--) {
      Piece piece = pieces.get(i);
      if (piece.isLineStart && piece.kind == SyntaxKind.COMMENT) {
        if (below >= 0) {
          piece.setBlanks(below);
        } else if (i == pieces.size() - 1 && isAtMargin(text, piece.start)) {
          piece.setBlanks(0);
        }
      } else if (piece.isLineStart) {
        below = piece.kind == SyntaxKind.RIGHT_BRACE ? -1 : piece.blanks();
      }
    }
  }

  private static boolean isAtMargin(String text, int start) {
    return start == 0 || text.charAt(start - 1) == '\n' || text.charAt(start - 1) == '\r';
  }
}
