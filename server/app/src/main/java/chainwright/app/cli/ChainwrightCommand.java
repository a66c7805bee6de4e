package chainwright.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The root of the command line. Each subcommand is a class of this package, named below. */
@Command(
    name = "chainwright",
    mixinStandardHelpOptions = true,
    versionProvider = ChainwrightCommand.Version.class,
    description = "Judges, draws and tidies audio processing chains written as plain text.",
    subcommands = {
      LspCommand.class,
      CheckCommand.class,
      TidyCommand.class,
      PlotCommand.class,
      DemoCommand.class
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:nothing to report",
      "1:findings, or files that would change",
      "2:wrong usage, or a file that cannot be read"
    })
public final class ChainwrightCommand implements Callable<Integer> {

  /** The exit code when there is nothing to report. */
  static final int CLEAN = 0;

  /** The exit code when there are findings. */
  static final int FINDINGS = 1;

  /** The exit code when the work could not be done. */
  static final int TROUBLE = 2;

  @Spec private CommandSpec spec;

  /** Made by {@link #run}. */
  ChainwrightCommand() {}

  /**
   * Runs the command line.
   *
   * @param arguments the arguments of the process
   * @return the exit code: 0 when there is nothing to report, 1 with findings, 2 when the work
   *     could not be done
   */
  public static int run(String... arguments) {
    return execute(new CommandLine(new ChainwrightCommand()), arguments);
  }

  static int run(PrintWriter out, PrintWriter err, String... arguments) {
    return execute(new CommandLine(new ChainwrightCommand()).setOut(out).setErr(err), arguments);
  }

  private static int execute(CommandLine line, String... arguments) {
    return line.setCaseInsensitiveEnumValuesAllowed(true)
        .setExecutionExceptionHandler(ChainwrightCommand::report)
        .execute(arguments);
  }

  /** What the outside world refuses is the person's to mend; anything else is a fault of ours. */
  private static int report(Exception trouble, CommandLine line, CommandLine.ParseResult parsed)
      throws Exception {
    if (!(trouble instanceof IOException)) {
      throw trouble;
    }
    line.getErr().println("chainwright: " + trouble.getMessage());
    return TROUBLE;
  }

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "a command must be named");
  }

  /** Says which version this is. */
  static final class Version implements CommandLine.IVersionProvider {

    @Override
    public String[] getVersion() {
      String version = ChainwrightCommand.class.getPackage().getImplementationVersion();
      return new String[] {"chainwright " + (version == null ? "unreleased" : version)};
    }
  }
}
