package chainwright.app.page;

import chainwright.app.plot.CellText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Lays a page out for a terminal.
 *
 * @param width how many cells a line may take
 * @param strong makes a heading stand out; gives back the text as it is where nothing can
 */
public record TextPage(int width, UnaryOperator<String> strong)
    implements Block.Visitor<List<String>> {

  private static final int INDENT = 2;
  private static final int GAP = 2;
  private static final int NARROWEST = 16;

  /** The widest word that has its meaning beside it. */
  private static final int TERM = 26;

  /**
   * Lays a page out.
   *
   * @param page the page
   * @return the text, each line ended by LF
   */
  public String render(Page page) {
    StringBuilder text = new StringBuilder();
    Wrapping.lines(page.title(), width)
        .forEach(line -> text.append(strong.apply(line)).append('\n'));
    for (Block block : page.blocks()) {
      text.append('\n');
      block.accept(this).forEach(line -> text.append(line.stripTrailing()).append('\n'));
    }
    return text.toString();
  }

  @Override
  public List<String> visitHeading(Block.Heading heading) {
    return Wrapping.lines(heading.text(), width).stream().map(strong).toList();
  }

  @Override
  public List<String> visitParagraph(Block.Paragraph paragraph) {
    return Wrapping.lines(paragraph.text(), width);
  }

  @Override
  public List<String> visitItems(Block.Items items) {
    List<String> lines = new ArrayList<>();
    for (String text : items.texts()) {
      hang("- ", Wrapping.lines(text, width - INDENT), lines);
    }
    return lines;
  }

  @Override
  public List<String> visitTerms(Block.Terms terms) {
    int widest =
        terms.terms().stream()
            .mapToInt(term -> CellText.width(term.word()))
            .filter(cells -> cells <= TERM)
            .max()
            .orElse(0);
    List<String> lines = new ArrayList<>();
    for (Block.Term term : terms.terms()) {
      String head = " ".repeat(INDENT) + padded(term.word(), widest) + " ".repeat(GAP);
      int indent = INDENT + widest + GAP;
      List<String> meaning = Wrapping.lines(term.meaning(), Math.max(NARROWEST, width - indent));
      if (CellText.width(term.word()) > widest) {
        lines.add(" ".repeat(INDENT) + term.word());
        head = " ".repeat(indent);
      }
      hang(head, meaning, lines);
    }
    return lines;
  }

  @Override
  public List<String> visitTable(Block.Table table) {
    List<List<String>> all = new ArrayList<>();
    all.add(table.heads());
    all.addAll(table.rows());
    List<Integer> widths = new ArrayList<>();
    int taken = INDENT;
    for (int i = 0; i < table.heads().size(); i++) {
      int column = i;
      int cells = all.stream().mapToInt(row -> CellText.width(row.get(column))).max().orElse(0);
      widths.add(cells);
      taken += cells + GAP;
    }
    taken -= GAP;
    int tooMuch = taken - width;
    tooMuch -= narrow(all, widths, 0, tooMuch);
    for (int column = widths.size() - 1; column > 0; column--) {
      tooMuch -= narrow(all, widths, column, tooMuch);
    }
    List<String> lines = new ArrayList<>();
    for (List<String> row : all) {
      lay(row, widths, lines);
    }
    return lines;
  }

  /** Takes cells from a column that can be wrapped, down to its longest word; returns how many. */
  private static int narrow(List<List<String>> all, List<Integer> widths, int column, int tooMuch) {
    int longest =
        all.stream()
            .flatMap(row -> Arrays.stream(row.get(column).split(" ", -1)))
            .mapToInt(CellText::width)
            .max()
            .orElse(0);
    int natural = widths.get(column);
    int least = Math.min(natural, longest + (column == 0 ? INDENT : 0));
    int narrowed = Math.min(natural, Math.max(least, natural - tooMuch));
    widths.set(column, narrowed);
    return natural - narrowed;
  }

  /** Lays a row out; what goes on in the first column is set in. */
  private static void lay(List<String> row, List<Integer> widths, List<String> into) {
    List<List<String>> cells = new ArrayList<>();
    int height = 0;
    for (int i = 0; i < row.size(); i++) {
      cells.add(Wrapping.lines(row.get(i), widths.get(i)));
      height = Math.max(height, cells.get(i).size());
    }
    for (int at = 0; at < height; at++) {
      StringBuilder line = new StringBuilder(" ".repeat(INDENT));
      for (int i = 0; i < row.size(); i++) {
        String cell = at < cells.get(i).size() ? cells.get(i).get(at) : "";
        String shown = i == 0 && at > 0 ? " ".repeat(INDENT) + cell : cell;
        line.append(padded(shown, widths.get(i))).append(" ".repeat(GAP));
      }
      into.add(line.toString());
    }
  }

  @Override
  public List<String> visitCode(Block.Code code) {
    return code.lines().stream().map(line -> " ".repeat(2 * INDENT) + line).toList();
  }

  @Override
  public List<String> visitQuote(Block.Quote quote) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : quote.text().split("\n\\s*\n", -1)) {
      if (!lines.isEmpty()) {
        lines.add(">");
      }
      Wrapping.lines(paragraph, width - INDENT).forEach(line -> lines.add("> " + line));
    }
    return lines;
  }

  @Override
  public List<String> visitStep(Block.Step step) {
    String margin = " ".repeat(2 * INDENT * step.depth());
    String head = margin + padded(step.number(), 2) + " ".repeat(GAP);
    String indent = " ".repeat(CellText.width(head));
    TextPage inside = new TextPage(Math.max(NARROWEST, width - indent.length()), strong);
    List<String> lines = new ArrayList<>();
    List<String> heads = Wrapping.lines(step.head(), inside.width);
    lines.add(head + strong.apply(heads.get(0)));
    heads.stream().skip(1).forEach(line -> lines.add(indent + strong.apply(line)));
    for (Block block : step.body()) {
      block.accept(inside).forEach(line -> lines.add(indent + line));
    }
    return lines;
  }

  private static void hang(String head, List<String> texts, List<String> into) {
    into.add(head + texts.get(0));
    String indent = " ".repeat(CellText.width(head));
    Collections.addAll(
        into, texts.stream().skip(1).map(line -> indent + line).toArray(String[]::new));
  }

  private static String padded(String text, int cells) {
    return text + " ".repeat(Math.max(0, cells - CellText.width(text)));
  }
}
