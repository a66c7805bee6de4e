package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.Workspace;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges chain files. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Judges chain files: what the text gets wrong, and what the trade would object to.",
      "Imports are read from disk. The findings are those that an editor shows."
    },
    footer = {
      "%nExamples:",
      "  chainwright check session.chain                  one file",
      "  chainwright check takes/                         every chain file in a folder",
      "  chainwright check --fail-on error session.chain  end with 1 only for errors",
      "  chainwright check --format json session.chain    for another program"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:no finding as grave as --fail-on",
      "1:findings as grave as --fail-on",
      "2:wrong usage, or a file that cannot be read"
    })
final class CheckCommand implements Callable<Integer> {

  /** How findings are written. */
  enum Format {
    /** For people. */
    TEXT,
    /** For programs. */
    JSON
  }

  /** Whether colours are used. */
  enum When {
    /** On a terminal. */
    AUTO,
    /** Always. */
    ALWAYS,
    /** Never. */
    NEVER
  }

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Chain files, and folders whose chain files are meant.")
  private List<Path> paths;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How findings are written; text by default.")
  private Format format = Format.TEXT;

  @Option(
      names = "--fail-on",
      paramLabel = "error|warning|info|hint",
      description = "From which severity on the command ends with 1; warning by default.")
  private Severity failOn = Severity.WARNING;

  @Option(
      names = "--color",
      paramLabel = "auto|always|never",
      description = "Colours: by default on a terminal, unless NO_COLOR is set.")
  private When color = When.AUTO;

  @Override
  public Integer call() throws IOException {
    PrintWriter err = spec.commandLine().getErr();
    SectionReader reader = new SectionReader(Catalogue.load());
    Workspace workspace = Workspace.ofFolders(List.of(), reader);
    Judgements judgements = new Judgements(reader.catalogue());
    List<Path> judged = new ArrayList<>();
    List<FoundFinding> found = new ArrayList<>();
    boolean isTrouble = false;
    for (Path file : NamedFiles.files(paths)) {
      try {
        DocumentSnapshot document = NamedFiles.open(file, workspace);
        judged.add(file);
        found.addAll(FoundFinding.in(file, document, workspace, judgements));
      } catch (IOException e) {
        isTrouble = true;
        err.println("chainwright: " + e.getMessage());
      }
    }
    if (!judged.isEmpty()) {
      print(judged, found);
    }
    boolean isFailure =
        found.stream().anyMatch(one -> one.finding().severity().compareTo(failOn) <= 0);
    return isTrouble
        ? ChainwrightCommand.TROUBLE
        : isFailure ? ChainwrightCommand.FINDINGS : ChainwrightCommand.CLEAN;
  }

  private void print(List<Path> judged, List<FoundFinding> found) {
    PrintWriter out = spec.commandLine().getOut();
    if (format == Format.JSON) {
      out.println(FindingJson.of(judged, found));
      return;
    }
    FindingSheet sheet = new FindingSheet(out, isColoured());
    found.forEach(sheet::print);
    out.println(summary(judged.size(), found));
  }

  private boolean isColoured() {
    return switch (color) {
      case ALWAYS -> true;
      case NEVER -> false;
      case AUTO -> Ansi.AUTO.enabled();
    };
  }

  private static String summary(int files, List<FoundFinding> found) {
    List<String> counts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count = found.stream().filter(one -> one.finding().severity() == severity).count();
      String word = severity.name().toLowerCase(Locale.ROOT);
      if (count > 0) {
        counts.add(counted(count, word));
      }
    }
    return counted(files, "file")
        + " checked: "
        + (counts.isEmpty() ? "nothing to report" : String.join(", ", counts));
  }

  private static String counted(long count, String word) {
    return count + " " + word + (count == 1 ? "" : "s");
  }
}
