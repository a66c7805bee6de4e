package chainwright.app.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Spec;

/** The root of the command line. Each subcommand is a class of this package, named below. */
@Command(
    name = "chainwright",
    versionProvider = ChainwrightCommand.Version.class,
    customSynopsis = "chainwright COMMAND [...]",
    description = {
      "%nJudges, draws, renders, explains and tidies audio processing chains written as plain"
          + " text: one stage a line, in the order of the signal. Measures recordings.%n",
      "  chain lead \"Lead vocal\" {",
      "    source       lead-vocal",
      "    high-pass    66 Hz  18 dB/oct",
      "    compressor   threshold -20 dBFS  ratio 2:1  attack 15 ms  release 140 ms",
      "  }%n"
    },
    commandListHeading = "%nCommands:%n",
    subcommands = {
      CheckCommand.class,
      ExplainCommand.class,
      PlotCommand.class,
      MeasureCommand.class,
      RenderCommand.class,
      TidyCommand.class,
      DemoCommand.class,
      LspCommand.class,
      CompletionCommand.class
    },
    footerHeading = "%nBegin here:%n",
    footer = {
      "  chainwright demo try-it                     an invented session to try it on",
      "  chainwright check try-it/to-review.chain    what is wrong, why, what to do",
      "  chainwright explain over-steep-slope        more about one finding",
      "  chainwright explain high-pass               what is usual, for each source",
      "  chainwright COMMAND --help                  more about one command"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done, nothing to report",
      "1:findings, with `tidy --check` files that would change, or a render that is"
          + " not as asked",
      "2:wrong usage, or a file that cannot be read or written"
    })
public final class ChainwrightCommand implements Callable<Integer> {

  /** The exit code when there is nothing to report. */
  static final int CLEAN = 0;

  /** The exit code when there are findings. */
  static final int FINDINGS = 1;

  /** The exit code when the work could not be done. */
  static final int TROUBLE = 2;

  private final InputStream input;
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  /** Made by {@link #run}. */
  ChainwrightCommand(InputStream input, Terminal terminal) {
    this.input = input;
    this.terminal = terminal;
  }

  /**
   * Runs the command line.
   *
   * @param arguments the arguments of the process
   * @return the exit code: 0 when there is nothing to report, 1 with findings, 2 when the work
   *     could not be done
   */
  public static int run(String... arguments) {
    Terminal terminal = Terminal.of(System.getenv());
    return commandLine(System.in, terminal).execute(arguments);
  }

  static int run(InputStream in, PrintWriter out, PrintWriter err, String... arguments) {
    return commandLine(in, Terminal.PLAIN).setOut(out).setErr(err).execute(arguments);
  }

  /**
   * Builds the command line as the manual pages are made from it.
   *
   * @return the command line with all its commands, which reads nothing and shows no colours
   */
  public static CommandLine commandLine() {
    return commandLine(InputStream.nullInputStream(), Terminal.PLAIN);
  }

  private static CommandLine commandLine(InputStream in, Terminal terminal) {
    CommandLine line = new CommandLine(new ChainwrightCommand(in, terminal));
    line.getCommandSpec()
        .addOption(
            OptionSpec.builder("-V", "--version")
                .versionHelp(true)
                .description("Says which version this is.")
                .build());
    addHelp(line);
    for (CommandLine command : line.getSubcommands().values()) {
      addHelp(command);
      command.getCommandSpec().usageMessage().synopsisHeading("%nUsage: ");
    }
    return line.setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(WrongUsage::report)
        .setExecutionExceptionHandler(ChainwrightCommand::report);
  }

  private static void addHelp(CommandLine line) {
    line.getCommandSpec()
        .addOption(
            OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Shows this help.")
                .build());
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

  /** Standard input. */
  InputStream input() {
    return input;
  }

  Terminal terminal() {
    return terminal;
  }

  @Override
  public Integer call() {
    spec.commandLine().usage(spec.commandLine().getErr());
    return TROUBLE;
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
