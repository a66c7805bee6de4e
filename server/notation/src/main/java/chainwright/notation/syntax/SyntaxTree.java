package chainwright.notation.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The lossless tree of a file: its sections in a row. Immutable; an edit makes a new tree that
 * keeps every section whose text is the same.
 */
public final class SyntaxTree {

  private final String text;
  private final List<Section> sections;
  private final int[] starts;

  private SyntaxTree(String text, List<Section> sections, int[] starts) {
    this.text = text;
    this.sections = List.copyOf(sections);
    this.starts = starts;
  }

  /**
   * Parses a text. This never fails.
   *
   * @param text any text
   * @return its tree
   */
  public static SyntaxTree parse(String text) {
    return parse(text, Spread.IN_TURN);
  }

  /**
   * Parses a long text, whose sections are parsed each for itself. This never fails.
   *
   * @param text any text
   * @param spread how many sections are parsed
   * @return its tree
   */
  public static SyntaxTree parse(String text, Spread spread) {
    return new SyntaxTree("", List.of(), new int[] {0}).withText(text, spread);
  }

  /**
   * Parses another state of the same file. The result is what {@link #parse} would give, but
   * sections at the start and at the end whose text has not changed are the same objects.
   *
   * @param newText the text after the edit
   * @return its tree
   */
  public SyntaxTree withText(String newText) {
    return withText(newText, Spread.IN_TURN);
  }

  private SyntaxTree withText(String newText, Spread spread) {
    int[] bounds = SectionSplitter.boundaries(newText);
    int count = bounds.length - 1;
    int front = 0;
    while (front < count && front < sections.size() && isSame(newText, bounds, front, front)) {
      front++;
    }
    int back = 0;
    while (back < count - front
        && back < sections.size() - front
        && isSame(newText, bounds, count - 1 - back, sections.size() - 1 - back)) {
      back++;
    }
    List<Section> result = new ArrayList<>(count);
    result.addAll(sections.subList(0, front));
    List<String> changed = new ArrayList<>(count - back - front);
    for (int i = front; i < count - back; i++) {
      changed.add(newText.substring(bounds[i], bounds[i + 1]));
    }
    result.addAll(spread.map(changed, SectionParser::parse));
    result.addAll(sections.subList(sections.size() - back, sections.size()));
    return new SyntaxTree(newText, result, Arrays.copyOf(bounds, count));
  }

  private boolean isSame(String newText, int[] bounds, int index, int oldIndex) {
    String old = sections.get(oldIndex).text();
    return old.length() == bounds[index + 1] - bounds[index]
        && newText.startsWith(old, bounds[index]);
  }

  /**
   * Returns the file's text.
   *
   * @return every character of it
   */
  public String text() {
    return text;
  }

  /**
   * Returns the sections.
   *
   * @return one or more, in the order of the text
   */
  public List<Section> sections() {
    return sections;
  }

  /**
   * Returns where a section begins.
   *
   * @param index the section's place in {@link #sections()}
   * @return its offset in the file
   */
  public int startOf(int index) {
    return starts[index];
  }

  /**
   * Returns which section holds an offset; at a border it is the one that begins there.
   *
   * @param offset an offset from 0 to the text's length
   * @return the section's place in {@link #sections()}
   */
  public int sectionAt(int offset) {
    int found = Arrays.binarySearch(starts, offset);
    return found >= 0 ? found : -found - 2;
  }
}
