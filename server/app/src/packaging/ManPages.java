import chainwright.app.cli.ChainwrightCommand;
import java.io.File;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/** Writes a manual page of each command as AsciiDoc into a folder. Run by the packages' build, from source. */
class ManPages {

  public static void main(String[] arguments) throws Exception {
    CommandLine root = ChainwrightCommand.commandLine();
    List<CommandSpec> pages = new ArrayList<>();
    pages.add(root.getCommandSpec());
    root.getSubcommands().values().forEach(command -> pages.add(command.getCommandSpec()));
    int code =
        ManPageGenerator.generateManPage(
            new File(arguments[0]), null, new boolean[0], true, pages.toArray(new CommandSpec[0]));
    System.exit(code);
  }
}
