package chainwright.app.page;

import chainwright.notation.diagnostic.Prose;
import java.util.List;

/**
 * A piece of a page. Words in it may hold code between backquotes, as in Markdown; outside of it
 * the minus of a number is set as a minus sign.
 */
public sealed interface Block {

  /**
   * Shows itself to a visitor.
   *
   * @param <R> what the visitor answers
   * @param visitor the visitor
   * @return its answer
   */
  <R> R accept(Visitor<R> visitor);

  /**
   * A heading inside the page.
   *
   * @param text the heading, without an end mark
   */
  record Heading(String text) implements Block {

    /**
     * Sets the words.
     *
     * @param text the heading
     */
    public Heading {
      text = Prose.set(text);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitHeading(this);
    }
  }

  /**
   * Prose.
   *
   * @param text one or more sentences
   */
  record Paragraph(String text) implements Block {

    /**
     * Sets the words.
     *
     * @param text one or more sentences
     */
    public Paragraph {
      text = Prose.set(text);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitParagraph(this);
    }
  }

  /**
   * A list.
   *
   * @param texts its items
   */
  record Items(List<String> texts) implements Block {

    /**
     * Copies the list, and sets the words.
     *
     * @param texts its items
     */
    public Items {
      texts = texts.stream().map(Prose::set).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitItems(this);
    }
  }

  /**
   * Words with what they mean.
   *
   * @param terms the words, in order
   */
  record Terms(List<Term> terms) implements Block {

    /**
     * Copies the list.
     *
     * @param terms the words
     */
    public Terms {
      terms = List.copyOf(terms);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitTerms(this);
    }
  }

  /**
   * A word with what it means.
   *
   * @param word the word
   * @param meaning what is to be said of it
   */
  record Term(String word, String meaning) {

    /**
     * Sets the words.
     *
     * @param word the word
     * @param meaning what is to be said of it
     */
    public Term {
      word = Prose.set(word);
      meaning = Prose.set(meaning);
    }
  }

  /**
   * A table. Its first column gives way where there is no room.
   *
   * @param heads what each column holds
   * @param rows the rows, each as long as {@code heads}
   */
  record Table(List<String> heads, List<List<String>> rows) implements Block {

    /**
     * Copies the lists, and sets the words.
     *
     * @param heads what each column holds
     * @param rows the rows
     */
    public Table {
      heads = List.copyOf(heads);
      rows = rows.stream().map(row -> row.stream().map(Prose::set).toList()).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitTable(this);
    }
  }

  /**
   * Lines that stand as they are.
   *
   * @param lines the lines, with marks below some of them
   */
  record Code(List<String> lines) implements Block {

    /**
     * Copies the list.
     *
     * @param lines the lines
     */
    public Code {
      lines = List.copyOf(lines);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitCode(this);
    }
  }

  /**
   * What an author has written, in Markdown of their own.
   *
   * @param text the words
   */
  record Quote(String text) implements Block {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitQuote(this);
    }
  }

  /**
   * A step of an order, with what is to be said of it.
   *
   * @param number its number, such as "3.1"
   * @param depth how far inside it stands, 0 or more
   * @param head what it is
   * @param body what is to be said of it
   */
  record Step(String number, int depth, String head, List<Block> body) implements Block {

    /**
     * Copies the list, and sets the words.
     *
     * @param number its number
     * @param depth how far inside it stands
     * @param head what it is
     * @param body what is to be said of it
     */
    public Step {
      head = Prose.set(head);
      body = List.copyOf(body);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitStep(this);
    }
  }

  /**
   * An answer for every kind of block.
   *
   * @param <R> the answer
   */
  interface Visitor<R> {

    /**
     * Answers for a heading.
     *
     * @param heading the heading
     * @return the answer
     */
    R visitHeading(Heading heading);

    /**
     * Answers for prose.
     *
     * @param paragraph the prose
     * @return the answer
     */
    R visitParagraph(Paragraph paragraph);

    /**
     * Answers for a list.
     *
     * @param items the list
     * @return the answer
     */
    R visitItems(Items items);

    /**
     * Answers for words with what they mean.
     *
     * @param terms the words
     * @return the answer
     */
    R visitTerms(Terms terms);

    /**
     * Answers for a table.
     *
     * @param table the table
     * @return the answer
     */
    R visitTable(Table table);

    /**
     * Answers for lines that stand as they are.
     *
     * @param code the lines
     * @return the answer
     */
    R visitCode(Code code);

    /**
     * Answers for an author's words.
     *
     * @param quote the words
     * @return the answer
     */
    R visitQuote(Quote quote);

    /**
     * Answers for a step.
     *
     * @param step the step
     * @return the answer
     */
    R visitStep(Step step);
  }
}
