package chainwright.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The entry of the language server in the help; the server itself starts before this is read. */
@Command(
    name = "lsp",
    header = "Serves an editor.",
    description = {
      "%nRuns the language server over standard input and output. An editor starts it by itself:"
          + " plots on hover, findings with fixes, completions, layout and names. editor-clients/"
          + " has the few lines for each editor.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExample:%n",
    footer = {
      "  chainwright lsp    what an editor starts; it takes no arguments, and waits",
      "                     for messages of the Language Server Protocol"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the editor shut it down",
      "1:the editor went away without shutting it down",
      "2:wrong usage"
    })
final class LspCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "`lsp` takes no arguments");
  }
}
