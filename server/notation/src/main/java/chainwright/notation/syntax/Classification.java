package chainwright.notation.syntax;

import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/** What each token of a section is to a reader, as far as that is known without a catalogue. */
public final class Classification {

  /** A class of tokens. */
  public enum TokenClass {
    /** The first word of a statement: {@code chain}, {@code bell}. */
    STATEMENT,
    /** A word inside a statement: a setting's name or a word for its value. */
    SETTING,
    /** A word that is defined in one place and used in others. */
    NAME,
    /** A number of any form. */
    NUMBER,
    /** The unit of a number. */
    UNIT,
    /** A text in quotes. */
    STRING,
    /** A note: a line of prose, or the text of {@code note}. */
    NOTE,
    /** A comment. */
    COMMENT,
    /** A brace, {@code =}, {@code ...}, or the {@code to} of a range. */
    PUNCTUATION
  }

  /**
   * A token and its class.
   *
   * @param span where it stands, from the section's start
   * @param tokenClass its class
   */
  public record Entry(TextSpan span, TokenClass tokenClass) {}

  private Classification() {}

  /**
   * Classifies a section.
   *
   * @param section the section
   * @return an entry for every token but blanks, line ends and unknown characters, ascending
   */
  public static List<Entry> of(Section section) {
    Walk walk = new Walk();
    walk.addAll(section.root());
    return List.copyOf(walk.entries);
  }

  /** Goes through the tokens in the order of the text. */
  private static final class Walk {
    private final List<Entry> entries = new ArrayList<>();
    private int at;

    /** What the brace behind a text whose quote is forgotten looks like: a part of it. */
    private TokenClass brace = TokenClass.PUNCTUATION;

    private void addAll(SyntaxNode parent) {
      for (SyntaxElement child : parent.children()) {
        if (child instanceof SyntaxNode node && node.kind() == SyntaxKind.STATEMENT) {
          addStatement(node);
        } else {
          add(child, TokenClass.SETTING, TokenClass.STRING);
        }
      }
    }

    private void addStatement(SyntaxNode statement) {
      String head = "";
      boolean isName = false;
      boolean isFirst = true;
      for (SyntaxElement child : statement.children()) {
        TokenClass text = head.equals("note") ? TokenClass.NOTE : TokenClass.STRING;
        if (child instanceof SyntaxToken token && token.kind() == SyntaxKind.WORD) {
          String word = token.text();
          TokenClass inside = isName ? TokenClass.NAME : TokenClass.SETTING;
          add(child, isFirst ? TokenClass.STATEMENT : inside, text);
          isName =
              isFirst
                  ? ReservedWords.isNamingStatement(word)
                  : !isName && ReservedWords.isNamingMark(word);
          head = isFirst ? word : head;
        } else {
          add(child, TokenClass.SETTING, text);
          isName &= child.kind().isTrivia();
        }
        isFirst = false;
      }
    }

    private void add(SyntaxElement element, TokenClass word, TokenClass text) {
      if (element instanceof SyntaxNode node) {
        if (node.kind() == SyntaxKind.BLOCK || node.kind() == SyntaxKind.NOTE) {
          addAll(node);
        } else {
          node.children().forEach(child -> add(child, TokenClass.PUNCTUATION, text));
        }
        return;
      }
      TextSpan span = TextSpan.ofLength(at, element.length());
      at += element.length();
      switch (element.kind()) {
        case WORD -> entries.add(new Entry(span, word));
        case NUMBER, COLON_NUMBER, FRACTION -> entries.add(new Entry(span, TokenClass.NUMBER));
        case UNIT -> entries.add(new Entry(span, TokenClass.UNIT));
        case STRING -> {
          entries.add(new Entry(span, text));
          brace = QuotedText.isClosed(((SyntaxToken) element).text()) ? brace : text;
        }
        case PROSE -> entries.add(new Entry(span, TokenClass.NOTE));
        case COMMENT -> entries.add(new Entry(span, TokenClass.COMMENT));
        case LEFT_BRACE -> entries.add(new Entry(span, brace));
        case EQUALS, RIGHT_BRACE, CONTINUATION ->
            entries.add(new Entry(span, TokenClass.PUNCTUATION));
        case NEWLINE -> brace = TokenClass.PUNCTUATION;
        case WHITESPACE, UNKNOWN, SECTION, STATEMENT, QUANTITY, RANGE, BLOCK, NOTE -> {}
      }
    }
  }
}
