package chainwright.app.page;

import java.util.List;
import java.util.stream.Collectors;

/** Writes a page in Markdown (CommonMark, with the tables of GitHub Flavored Markdown). */
public record MarkdownPage() implements Block.Visitor<String> {

  /**
   * Writes a page.
   *
   * @param page the page
   * @return the text, ended by LF
   */
  public String render(Page page) {
    return "# "
        + page.title()
        + "\n"
        + page.blocks().stream()
            .map(block -> "\n" + block.accept(this) + "\n")
            .collect(Collectors.joining());
  }

  @Override
  public String visitHeading(Block.Heading heading) {
    return "## " + heading.text();
  }

  @Override
  public String visitParagraph(Block.Paragraph paragraph) {
    return paragraph.text();
  }

  @Override
  public String visitItems(Block.Items items) {
    return items.texts().stream().map(text -> "- " + text).collect(Collectors.joining("\n"));
  }

  @Override
  public String visitTerms(Block.Terms terms) {
    return terms.terms().stream()
        .map(term -> "- **" + term.word() + "**: " + term.meaning())
        .collect(Collectors.joining("\n"));
  }

  @Override
  public String visitTable(Block.Table table) {
    return row(table.heads())
        + "\n"
        + "|---".repeat(table.heads().size())
        + "|\n"
        + table.rows().stream().map(MarkdownPage::row).collect(Collectors.joining("\n"));
  }

  private static String row(List<String> cells) {
    return cells.stream()
        .map(cell -> cell.replace("|", "\\|"))
        .collect(Collectors.joining(" | ", "| ", " |"));
  }

  @Override
  public String visitCode(Block.Code code) {
    return "```chain\n" + String.join("\n", code.lines()) + "\n```";
  }

  @Override
  public String visitQuote(Block.Quote quote) {
    return quote.text().lines().map(line -> "> " + line).collect(Collectors.joining("\n"));
  }

  @Override
  public String visitStep(Block.Step step) {
    String indent = "  ".repeat(step.depth());
    return indent
        + "- **"
        + step.number()
        + " "
        + step.head()
        + "**"
        + step.body().stream()
            .map(block -> "\n\n" + block.accept(this).indent(2 * step.depth() + 2).stripTrailing())
            .collect(Collectors.joining());
  }
}
