package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
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
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Judges chain files. */
@Command(
    name = "check",
    header = "Judges chain files.",
    description = {
      "%nSays what the text gets wrong, and what the trade would object to, each with"
          + " why it matters and what to do.%n",
      "Imports are read from disk. The findings are those that an editor shows. A rule"
          + " is silenced in the text: `deliberate RULE \"reason\"`.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright check song.chain                   one file",
      "  chainwright check takes                        every chain file in a folder",
      "  chainwright check 'takes/vocal-*.chain'        those that a pattern names",
      "  chainwright check --fail-on error song.chain   end with 1 only for errors",
      "  chainwright check --format json song.chain     for another program",
      "  chainwright explain over-steep-slope           more about one finding",
      "",
      "How grave a finding is:",
      "  error    the text does not say what to do, or asks for what cannot be",
      "  warning  it will probably be heard, or go wrong",
      "  info     worth knowing; whether it matters only the recording tells",
      "  hint     unusual; perhaps on purpose",
      "",
      "JSON: one object with",
      "  version   1; what a version has keeps its name and meaning, more may come",
      "  files     the names of the files that were judged",
      "  counts    how many errors, warnings, infos and hints: {\"error\": 2, ...}",
      "  findings  in the order of the text: code, severity, file, line, column,",
      "            endLine, endColumn, what, why, do, sources, related (each with",
      "            a place and what), fixes (title, keepsTheSound, preferred, and",
      "            edits: each a place and the text that replaces it)",
      "Lines and columns count from 1; a column is one code point. The end is the",
      "column behind the last character."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:no finding as grave as --fail-on",
      "1:findings as grave as --fail-on",
      "2:wrong usage, or a file that cannot be read; the others are judged"
    })
final class CheckCommand implements Callable<Integer> {

  /** How findings are written. */
  enum Format {
    /** For people. */
    TEXT,
    /** For programs. */
    JSON
  }

  @Spec private CommandSpec spec;
  @ParentCommand private ChainwrightCommand root;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Chain files, folders whose chain files are meant, or patterns.")
  private List<String> names;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How findings are written; text by default.")
  private Format format = Format.TEXT;

  @Option(
      names = "--fail-on",
      paramLabel = "SEVERITY",
      description =
          "From which severity on the command ends with 1: error, warning, info or"
              + " hint; warning by default.")
  private Severity failOn = Severity.WARNING;

  @Option(
      names = "--color",
      paramLabel = "auto|always|never",
      description = "Colours: by default on a terminal, unless NO_COLOR is set.")
  private Terminal.Colours color = Terminal.Colours.AUTO;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    SectionReader reader = new SectionReader(Catalogue.load());
    Workspace workspace = Workspace.ofFolders(List.of(), reader);
    Judgements judgements = new Judgements(reader.catalogue(), reader.spread());
    List<String> troubles = new ArrayList<>();
    List<CheckedFile> checked = new ArrayList<>();
    for (Path file : NamedFiles.find(names, troubles::add)) {
      try {
        DocumentSnapshot document = NamedFiles.open(file, workspace);
        checked.add(new CheckedFile(file, document, Findings.of(document, workspace, judgements)));
      } catch (IOException e) {
        troubles.add(e.getMessage());
      }
    }
    troubles.forEach(trouble -> err.println("chainwright: " + trouble));
    if (!checked.isEmpty()) {
      print(checked);
    }
    if (!troubles.isEmpty()) {
      return ChainwrightCommand.TROUBLE;
    }
    boolean isFailure =
        checked.stream()
            .flatMap(file -> file.findings().found().stream())
            .anyMatch(one -> one.finding().severity().compareTo(failOn) <= 0);
    return isFailure ? ChainwrightCommand.FINDINGS : ChainwrightCommand.CLEAN;
  }

  private void print(List<CheckedFile> checked) {
    PrintWriter out = spec.commandLine().getOut();
    if (format == Format.JSON) {
      out.println(FindingJson.of(checked));
      return;
    }
    FindingSheet sheet = new FindingSheet(out, root.terminal().with(color));
    for (CheckedFile file : checked) {
      file.findings().found().forEach(found -> sheet.print(file, found));
    }
    out.println(FindingCounts.summary(checked));
    FirstChain.hint(checked).forEach(out::println);
    checked.stream()
        .flatMap(file -> file.findings().found().stream())
        .map(found -> found.finding().code())
        .findFirst()
        .ifPresent(code -> out.println("More about a finding: chainwright explain " + code));
  }
}
