package chainwright.app.cli;

import chainwright.app.workspace.ChainFiles;
import chainwright.notation.format.Formatting;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxTree;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Brings chain files into their canonical layout. */
@Command(
    name = "tidy",
    header = "Lays chain files out.",
    description = {
      "%nSettings of neighbouring stages go into columns, units"
          + " and signs are spelt in one way, and two blanks stand for each level.%n",
      "The meaning stays the same, and so does every comment; a second run changes"
          + " nothing. A file is replaced as a whole or not at all.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright tidy song.chain            lay it out",
      "  chainwright tidy takes                 every chain file in a folder",
      "  chainwright tidy --preview song.chain  show what would change, line by line",
      "  chainwright tidy --check takes         for a build: fail if any would change",
      "  chainwright tidy - < song.chain        from standard input to standard output",
      "",
      "The preview is a unified diff: lines with - go, lines with + come."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done; with --check, nothing would change",
      "1:with --check only: files would change",
      "2:wrong usage, or a file that cannot be read or written; the others are done"
    })
final class TidyCommand implements Callable<Integer> {

  private static final String STANDARD_INPUT = "-";

  @Spec private CommandSpec spec;
  @ParentCommand private ChainwrightCommand root;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description =
          "Chain files, folders whose chain files are meant, or patterns; `-` alone for"
              + " standard input.")
  private List<String> names;

  @Option(
      names = "--check",
      description = "Writes nothing: names the files that would change, and ends with 1 if any.")
  private boolean isCheck;

  @Option(
      names = "--preview",
      description = "Writes nothing: shows as a unified diff what would change.")
  private boolean isPreview;

  @Override
  public Integer call() throws IOException {
    if (names.contains(STANDARD_INPUT)) {
      return standardInput();
    }
    List<String> troubles = new ArrayList<>();
    boolean isChange = false;
    for (Path file : NamedFiles.find(names, troubles::add)) {
      try {
        isChange |= tidy(file);
      } catch (IOException e) {
        troubles.add(e.getMessage());
      }
    }
    troubles.forEach(trouble -> spec.commandLine().getErr().println("chainwright: " + trouble));
    return troubles.isEmpty() ? code(isChange) : ChainwrightCommand.TROUBLE;
  }

  private int code(boolean isChange) {
    return isCheck && isChange ? ChainwrightCommand.FINDINGS : ChainwrightCommand.CLEAN;
  }

  private boolean tidy(Path file) throws IOException {
    String text = NamedFiles.read(file);
    if (!isOfChains(file, text)) {
      throw new IOException(
          "`"
              + file
              + "` holds no chain, bus or preset, and its name does not end in `"
              + ChainFiles.ENDING
              + "`: it is left as it is");
    }
    String tidy = tidied(text);
    if (tidy.equals(text)) {
      if (isPreview) {
        sayTidy(file.toString());
      }
      return false;
    }
    PrintWriter out = spec.commandLine().getOut();
    if (isPreview) {
      out.print(UnifiedDiff.of(file.toString(), text, tidy));
      out.flush();
    } else if (isCheck) {
      out.println("would change: " + file);
    } else {
      WholeFile.replace(file, tidy);
      out.println("tidied: " + file);
    }
    return true;
  }

  private int standardInput() throws IOException {
    if (names.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "`-` stands for standard input, and takes no other file beside it");
    }
    String text = NamedFiles.read("the standard input", root.input());
    String tidy = tidied(text);
    PrintWriter out = spec.commandLine().getOut();
    if (isPreview && tidy.equals(text)) {
      sayTidy("the standard input");
    } else if (isPreview) {
      out.print(UnifiedDiff.of(STANDARD_INPUT, text, tidy));
    } else if (!isCheck) {
      out.print(tidy);
    } else if (!tidy.equals(text)) {
      out.println("would change: the standard input");
    }
    out.flush();
    return code(!tidy.equals(text));
  }

  /** Nothing to show is no silence; but what is shown is a diff, so it is said beside it. */
  private void sayTidy(String name) {
    spec.commandLine().getErr().println("already tidy: " + name);
  }

  /** A text of another kind, named by a slip, would lose its own layout. */
  private static boolean isOfChains(Path file, String text) {
    return file.toString().endsWith(ChainFiles.ENDING)
        || text.lines().map(line -> line.strip().split("\\s", 2)[0]).anyMatch(Section::isBegunBy);
  }

  private static String tidied(String text) {
    return Formatting.format(SyntaxTree.parse(text));
  }
}
