import chainwright.app.cli.ChainwrightCommand;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/**
 * Writes a manual page of each command as AsciiDoc into a folder. Run by the packages' build, from
 * source.
 */
class ManPages {

  public static void main(String[] arguments) throws Exception {
    Path folder = Path.of(arguments[0]);
    CommandLine root = ChainwrightCommand.commandLine();
    List<CommandSpec> pages = new ArrayList<>();
    pages.add(root.getCommandSpec());
    root.getSubcommands().values().forEach(command -> pages.add(command.getCommandSpec()));
    int code =
        ManPageGenerator.generateManPage(
            folder.toFile(), null, new boolean[0], true, pages.toArray(new CommandSpec[0]));
    mendHeadings(folder);
    System.exit(code);
  }

  /** The help's headings end with a colon, a manual's do not. */
  private static void mendHeadings(Path folder) throws IOException {
    try (DirectoryStream<Path> pages = Files.newDirectoryStream(folder, "*.adoc")) {
      for (Path page : pages) {
        Files.writeString(page, Files.readString(page).replaceAll("(?m)^== +(.*):$", "== $1"));
      }
    }
  }
}
