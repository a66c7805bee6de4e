package chainwright.app.cli;

import chainwright.app.workspace.ChainFiles;
import chainwright.notation.format.Formatting;
import chainwright.notation.syntax.SyntaxTree;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Brings chain files into their canonical layout. */
@Command(
    name = "tidy",
    mixinStandardHelpOptions = true,
    description = {
      "Brings chain files into their canonical layout.",
      "The meaning stays the same, and so does every comment."
    })
final class TidyCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Chain files, and folders whose chain files are meant.")
  private List<Path> paths;

  @Option(
      names = "--check",
      description = "Writes nothing: names the files that would change, and ends with 1 if any.")
  private boolean isCheck;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    boolean isTrouble = false;
    boolean isChange = false;
    for (Path file : files()) {
      try {
        String text = Files.readString(file);
        String tidy = Formatting.format(SyntaxTree.parse(text));
        if (!tidy.equals(text)) {
          isChange = true;
          if (!isCheck) {
            write(file, tidy);
          }
          out.println((isCheck ? "would change: " : "tidied: ") + file);
        }
      } catch (IOException e) {
        isTrouble = true;
        err.println("chainwright: " + reason(file, e));
      }
    }
    if (isTrouble) {
      return ChainwrightCommand.TROUBLE;
    }
    return isCheck && isChange ? ChainwrightCommand.FINDINGS : ChainwrightCommand.CLEAN;
  }

  private List<Path> files() {
    List<Path> files = new ArrayList<>();
    for (Path path : paths) {
      if (Files.isDirectory(path)) {
        files.addAll(ChainFiles.under(List.of(path)));
      } else {
        files.add(path);
      }
    }
    return files;
  }

  /** Writes beside the file and moves into place, so that a broken write leaves the old text. */
  private static void write(Path file, String text) throws IOException {
    Path real = file.toRealPath();
    Path draft = Files.createTempFile(real.resolveSibling("").toAbsolutePath(), ".tidy", null);
    try {
      Files.writeString(draft, text);
      copyPermissions(real, draft);
      Files.move(draft, real, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  private static void copyPermissions(Path from, Path to) throws IOException {
    if (from.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
    }
  }

  private static String reason(Path file, IOException trouble) {
    if (trouble instanceof NoSuchFileException) {
      return "`" + file + "` does not exist";
    }
    if (trouble instanceof CharacterCodingException) {
      return "`" + file + "` is not written in UTF-8";
    }
    return "`" + file + "` cannot be read or written: " + trouble.getMessage();
  }
}
