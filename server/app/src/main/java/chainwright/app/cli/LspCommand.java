package chainwright.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The entry of the language server in the help; the server itself starts before this is read. */
@Command(
    name = "lsp",
    mixinStandardHelpOptions = true,
    description = "Runs the language server for an editor, over standard input and output.")
final class LspCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "`lsp` takes no arguments");
  }
}
