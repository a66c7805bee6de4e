package chainwright.app.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes what teaches a shell to complete this command line. */
@Command(
    name = "completion",
    header = "Writes the script that lets a shell complete these commands.",
    description = {
      "%nThe script knows the commands, their options and the words that options take. It goes to"
          + " standard output: put it where your shell looks for such scripts. An installed"
          + " package has done so already.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  eval \"$(chainwright completion bash)\"       for this shell only; or into ~/.bashrc",
      "  chainwright completion zsh > ~/.zfunc/_chainwright",
      "                              with ~/.zfunc in fpath before compinit",
      "  chainwright completion fish > ~/.config/fish/completions/chainwright.fish"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:written", "2:wrong usage"})
final class CompletionCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SHELL", description = "bash, zsh or fish.")
  private Shell shell;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    out.print(shell.scriptOf(spec.root().commandLine()));
    out.flush();
    return ChainwrightCommand.CLEAN;
  }
}
