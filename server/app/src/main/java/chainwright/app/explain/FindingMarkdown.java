package chainwright.app.explain;

import chainwright.app.page.Block;
import java.util.ArrayList;
import java.util.List;

/** Reads the Markdown that the pages of findings are written in: headings, paragraphs and lists. */
final class FindingMarkdown {

  private FindingMarkdown() {}

  /**
   * Returns the title.
   *
   * @param markdown the page
   * @return what its first line says
   */
  static String title(String markdown) {
    return markdown.lines().findFirst().orElse("").replaceFirst("^# ", "");
  }

  /**
   * Reads a page.
   *
   * @param markdown the page
   * @return its blocks, without its title
   */
  static List<Block> blocks(String markdown) {
    List<Block> blocks = new ArrayList<>();
    for (String block : markdown.strip().split("\n\\s*\n", -1)) {
      if (block.startsWith("## ")) {
        blocks.add(new Block.Heading(block.substring(3)));
      } else if (block.startsWith("- ")) {
        blocks.add(new Block.Items(List.of(block.substring(2).split("\n- ", -1))));
      } else if (!block.startsWith("# ")) {
        blocks.add(new Block.Paragraph(block));
      }
    }
    return blocks;
  }
}
