package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.engine.rules.RuleBook;
import chainwright.engine.rules.RuleCard;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The page of a rule, with the examples that the build runs.
 *
 * @param card what is said of the rule wherever it is met
 */
record RulePage(RuleCard card) {

  private static final String FOLDER = "/chainwright/rules/";

  Page page() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Paragraph(
            "`" + card.code() + "`, " + card.severity().name().toLowerCase(Locale.ROOT)));
    blocks.addAll(RuleMarkdown.blocks(read("page.md")));
    blocks.add(new Block.Heading("Breaks it"));
    blocks.add(new Block.Code(marked(read("failing.chain"))));
    blocks.add(new Block.Heading("Does not"));
    blocks.add(new Block.Code(read("passing.chain").lines().toList()));
    blocks.add(new Block.Heading("To break it on purpose"));
    blocks.add(
        new Block.Paragraph(
            "At the end of the stage's line: `deliberate " + card.code() + " \"the reason\"`"));
    return new Page(card.title(), blocks);
  }

  private String read(String name) {
    String resource = FOLDER + card.code() + "/" + name;
    try (InputStream bytes = RuleBook.class.getResourceAsStream(resource)) {
      if (bytes == null) {
        throw new IllegalStateException("the program was built without " + resource);
      }
      return new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The marks below a line stand in comments, which point at the line above and name the rule. */
  private static List<String> marked(String chain) {
    return chain.lines().map(line -> line.replaceFirst("^#(\\s*\\^+) .*", " $1")).toList();
  }
}
