package chainwright.app.cli;

import chainwright.app.explain.ChainReading;
import chainwright.app.explain.Explanations;
import chainwright.app.explain.StageReading;
import chainwright.app.page.JsonPage;
import chainwright.app.page.MarkdownPage;
import chainwright.app.page.Page;
import chainwright.app.page.TextPage;
import chainwright.app.view.Part;
import chainwright.notation.catalogue.Catalogue;
import chainwright.quantity.Unit;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** Explains a word of the trade, or reads a chain aloud. */
@Command(
    name = "explain",
    header = "Explains a stage, a setting, a finding or a source, or reads a chain aloud.",
    description = {
      "%nA stage: what it does, what too much of it sounds like, where it stands, and for"
          + " each setting what is cautious, usual and extreme for each kind of source. A"
          + " rule: what, why, what to do, when it is rightly broken, and an example. All"
          + " with the source of each statement, or that there is none. A fault of the text:"
          + " what is wrong, why that matters, how to mend it, and a wrong and a right text.%n",
      "A file: its chains line by line, in words and numbers, with the notes. Without"
          + " a word it lists what can be explained.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright explain                            what can be explained",
      "  chainwright explain high-pass                  a stage",
      "  chainwright explain high-pass lead-vocal       for one kind of source",
      "  chainwright explain compressor ratio           one setting of it",
      "  chainwright explain over-steep-slope           a rule",
      "  chainwright explain wrong-unit                 a fault of the text",
      "  chainwright explain lead-vocal                 a kind of source",
      "  chainwright explain song.chain --chain lead    a chain, read aloud",
      "  chainwright explain song.chain --chain lead --stage 2",
      "                                                 one stage of it, in full",
      "  chainwright explain --format markdown high-pass > high-pass.md"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:explained", "2:an unknown word, or a file that cannot be read"})
final class ExplainCommand implements Callable<Integer> {

  /** How a page is written. */
  enum Format {
    /** For a terminal. */
    TEXT,
    /** For a page elsewhere. */
    MARKDOWN,
    /** For programs. */
    JSON
  }

  /** The parser takes them in any number. */
  private static final int MOST_WORDS = 2;

  @Spec private CommandSpec spec;
  @ParentCommand private ChainwrightCommand root;

  @Parameters(
      paramLabel = "WORD|FILE",
      arity = "0..2",
      description = "A word; a stage and one of its settings or a source; or a chain file.")
  private List<String> words = List.of();

  @Option(
      names = "--chain",
      paramLabel = "NAME",
      description = "Of a file: the chain or bus; all of them by default.")
  private @Nullable String chain;

  @Option(
      names = "--stage",
      paramLabel = "LABEL|NUMBER",
      description = "Of a file: one stage, numbered as `plot --help` says.")
  private @Nullable String stage;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text, markdown or json; text by default.")
  private Format format = Format.TEXT;

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      description = "auto, always or never: headings in bold; by default on a terminal.")
  private Terminal.Colours color = Terminal.Colours.AUTO;

  @Override
  public Integer call() throws IOException {
    if (words.size() > MOST_WORDS) {
      throw new UnmatchedArgumentException(
          spec.commandLine(), words.subList(MOST_WORDS, words.size()));
    }
    boolean isFile = words.size() == 1 && isFile(words.get(0));
    if (!isFile && (chain != null || stage != null)) {
      throw new ParameterException(
          spec.commandLine(), "`--chain` and `--stage` belong to a chain file");
    }
    print(isFile ? read(Path.of(words.get(0))) : List.of(page()));
    return ChainwrightCommand.CLEAN;
  }

  private static boolean isFile(String word) {
    try {
      // The slash of a unit is none of a path.
      return Unit.parse(word).isEmpty()
          && (word.endsWith(".chain") || word.contains("/") || Files.isRegularFile(Path.of(word)));
    } catch (InvalidPathException noFile) {
      return false;
    }
  }

  private static boolean isFolder(String word) {
    try {
      return Files.isDirectory(Path.of(word));
    } catch (InvalidPathException noFile) {
      return false;
    }
  }

  private Page page() throws IOException {
    Explanations explanations = new Explanations(Catalogue.load());
    if (words.isEmpty()) {
      return explanations.index();
    }
    String first = words.get(0);
    if (words.size() == 1) {
      return explanations
          .explain(first)
          .orElseThrow(() -> unknown("nothing is called `" + first + "`", first, explanations));
    }
    String second = words.get(1);
    return explanations
        .explain(first, second)
        .orElseThrow(
            () ->
                explanations.explain(first).isEmpty()
                    ? unknown("nothing is called `" + first + "`", first, explanations)
                    : unknown(
                        "`" + first + "` has no setting and no range for `" + second + "`",
                        second,
                        explanations));
  }

  private static IOException unknown(String what, String word, Explanations explanations) {
    if (isFolder(word)) {
      return new IOException(new SeemingFile(Path.of(word)).insteadOfAChain().orElse(what));
    }
    String near =
        explanations.near(word).stream()
            .map(one -> "`" + one + "`")
            .collect(Collectors.joining(" or "));
    return new IOException(
        what
            + (near.isEmpty()
                ? "; `chainwright explain` lists what can be explained"
                : "; did you mean " + near + "?"));
  }

  private List<Page> read(Path file) throws IOException {
    List<OpenedChain> opened =
        chain == null && stage == null
            ? OpenedChain.all(file)
            : List.of(OpenedChain.open(file, chain));
    opened
        .get(0)
        .troubles(OpenedChain.LEFT_OUT)
        .forEach(trouble -> spec.commandLine().getErr().println(trouble));
    List<Page> pages = new ArrayList<>();
    for (OpenedChain one : opened) {
      pages.add(
          stage == null
              ? new ChainReading(one.outline(), one.scope()).page()
              : stage(one, PlotChoice.part(one.outline(), stage)));
    }
    return pages;
  }

  private static Page stage(OpenedChain opened, Part part) throws IOException {
    return part.stage()
        .map(stage -> new StageReading(opened.outline(), stage, part).page())
        .orElseThrow(
            () ->
                new IOException(
                    part.number()
                        + " `"
                        + part.words()
                        + "` holds several stages; name one inside it, such as "
                        + part.number()
                        + ".1"));
  }

  private void print(List<Page> pages) {
    PrintWriter out = spec.commandLine().getOut();
    Terminal terminal = root.terminal().with(color);
    String text =
        switch (format) {
          case TEXT -> {
            TextPage layout =
                new TextPage(terminal.width(), heading -> terminal.painted("1", heading));
            yield pages.stream().map(layout::render).collect(Collectors.joining("\n"));
          }
          case MARKDOWN ->
              pages.stream().map(new MarkdownPage()::render).collect(Collectors.joining("\n"));
          case JSON -> new JsonPage().render(pages);
        };
    out.print(text);
    out.flush();
  }
}
