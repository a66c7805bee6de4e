package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.engine.rules.RuleBook;
import chainwright.engine.rules.RuleCard;
import chainwright.notation.fault.Fault;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The page of a finding, be it a rule or a fault of the text, with the examples that the build
 * runs.
 *
 * @param code the finding's code
 * @param gravity how grave it is, such as "warning"
 * @param home a class beside whose package the folder is found
 * @param folder where the page and the examples lie
 */
record FindingPage(String code, String gravity, Class<?> home, String folder) {

  static FindingPage of(RuleCard card) {
    String gravity = card.severity().name().toLowerCase(Locale.ROOT);
    return new FindingPage(
        card.code(), gravity, RuleBook.class, "/chainwright/rules/" + card.code() + "/");
  }

  static FindingPage of(Fault fault) {
    return new FindingPage(
        fault.code(),
        fault.isError() ? "error" : "warning",
        Fault.class,
        "/chainwright/faults/" + fault.code() + "/");
  }

  /** The faults that have a page of their own: those of whose name there is no rule. */
  static List<Fault> faults() {
    return Arrays.stream(Fault.values())
        .filter(fault -> RuleBook.find(fault.code()).isEmpty())
        .toList();
  }

  /** What is wrong, in a few words. */
  String title() {
    return FindingMarkdown.title(read("page.md"));
  }

  Page page() {
    boolean isRule = RuleBook.find(code).isPresent();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Paragraph(
            "`" + code + "`, " + gravity + (isRule ? "" : ", a fault of the text")));
    String page = read("page.md");
    blocks.addAll(FindingMarkdown.blocks(page));
    blocks.add(new Block.Heading(isRule ? "Breaks it" : "Wrong"));
    blocks.add(new Block.Code(marked(read("failing.chain"))));
    blocks.add(new Block.Heading(isRule ? "Does not" : "Right"));
    blocks.add(new Block.Code(read("passing.chain").lines().toList()));
    if (isRule) {
      blocks.add(new Block.Heading("To break it on purpose"));
      blocks.add(
          new Block.Paragraph(
              "At the end of the stage's line: `deliberate " + code + " \"the reason\"`"));
    }
    return new Page(FindingMarkdown.title(page), blocks);
  }

  private String read(String name) {
    String resource = folder + name;
    try (InputStream bytes = home.getResourceAsStream(resource)) {
      if (bytes == null) {
        throw new IllegalStateException("the program was built without " + resource);
      }
      return new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The marks below a line stand in comments, which point at the line above and name the finding. A
   * mark that begins with the line, as {@code #^^^}, has the comment's sign for its first caret.
   */
  private static List<String> marked(String chain) {
    return chain
        .lines()
        .map(line -> line.replaceFirst("^#(\\^+) .*", "^$1").replaceFirst("^#(\\s+\\^+) .*", " $1"))
        .toList();
  }
}
