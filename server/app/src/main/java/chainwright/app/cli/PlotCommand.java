package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.engine.path.PathBuilder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Draws what a chain or a stage does, or writes the numbers. */
@Command(
    name = "plot",
    mixinStandardHelpOptions = true,
    description = {
      "Draws what a chain or one of its stages does, or writes the numbers.",
      "csv and json give frequency, magnitude [dB], unwrapped phase [rad] and group delay [s];",
      "input and output level [dBFS]; or harmonics of a sine of 1 kHz at -18 dBFS [dBFS].",
      "Every number has all its digits."
    },
    footer = {
      "%nExamples:",
      "  chainwright plot song.chain --chain lead                         the whole chain, as text",
      "  chainwright plot song.chain --chain lead --stage 2               its second stage",
      "  chainwright plot song.chain --chain lead --at 80,1000 --format csv",
      "  chainwright plot song.chain --chain lead --format svg -o lead.svg"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:done", "2:wrong usage, or a file that cannot be read or written"})
final class PlotCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The chain file.")
  private Path file;

  @Option(
      names = "--chain",
      paramLabel = "NAME",
      description = "The chain or bus; the only one by default.")
  private @Nullable String chain;

  @Option(
      names = "--stage",
      paramLabel = "LABEL|NUMBER",
      description = {
        "One stage: its label, or its number from 1 in the order of the signal, presets put in",
        "their places and what is bypassed left out."
      })
  private @Nullable String stage;

  @Option(
      names = "--axis",
      paramLabel = "frequency|level|harmonics",
      description = "What the plot runs over; what tells most by default.")
  private @Nullable PlotAxis axis;

  @Option(
      names = "--at",
      paramLabel = "NUMBER",
      split = ",",
      description = "Where to look: Hz, dBFS or numbers of harmonics, divided by commas.")
  private List<Double> at = List.of();

  @Option(
      names = "--format",
      paramLabel = "text|svg|csv|json",
      description = "What to write; text by default, csv with --at.")
  private @Nullable PlotFormat format;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Writes into a file instead of printing.")
  private @Nullable Path output;

  @Option(names = "--force", description = "Lets -o replace a file.")
  private boolean isForced;

  @Override
  public Integer call() throws IOException {
    Workspace workspace = Workspace.ofFolders(List.of(), new SectionReader(Catalogue.load()));
    DocumentSnapshot document = NamedFiles.open(file, workspace);
    Scope scope = workspace.projectOf(document).scope(document.file().key());
    Definition.Track track = PlotChoice.track(document.file().definitions(), chain);
    PlotSubject subject = subject(scope, track);
    PlotAxis used = axis == null ? subject.usualAxis() : axis;
    PlotFormat written = written();
    String text = written.write(subject, used, subject.table(used, at));
    if (output == null) {
      spec.commandLine().getOut().print(text);
      spec.commandLine().getOut().flush();
    } else {
      NewFile.write(output, text, isForced);
    }
    warnOfErrors(document);
    return ChainwrightCommand.CLEAN;
  }

  private PlotFormat written() {
    if (format == null) {
      return at.isEmpty() ? PlotFormat.TEXT : PlotFormat.CSV;
    }
    if (format.isDrawing() && !at.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "`--at` picks numbers, for csv and json; a drawing shows the curve");
    }
    return format;
  }

  private PlotSubject subject(Scope scope, Definition.Track track) throws IOException {
    var path = new PathBuilder(scope).build(track);
    return new PlotSubject(path, PlotChoice.stage(path, stage));
  }

  private void warnOfErrors(DocumentSnapshot document) {
    long errors =
        document.file().sections().stream()
            .flatMap(section -> section.findings().stream())
            .filter(finding -> finding.severity() == Severity.ERROR)
            .count();
    if (errors > 0) {
      spec.commandLine()
          .getErr()
          .println(
              "chainwright: the text has errors, and what they stand in is left out; see"
                  + " `chainwright check "
                  + file
                  + "`");
    }
  }
}
