package chainwright.app.cli;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.app.demo.DemoTakes;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes an invented session to try everything on. */
@Command(
    name = "demo",
    header = "Writes an invented session to try everything on.",
    description = {
      "%nIt has several chains with their recordings, and goes into a new folder. One file of it"
          + " is full of faults, to be found first by eye and then by `check`; answers.md tells"
          + " them. The recordings are computed, from models of voices and instruments.%n",
      "Nothing that exists is ever overwritten.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright demo try-it                    write it",
      "  chainwright check try-it/to-review.chain   then let it be judged",
      "  chainwright explain try-it/to-review.chain --chain tired-lead",
      "                                             and read aloud",
      "  chainwright measure try-it/takes/lead.wav  a recording measured",
      "  chainwright render try-it/tin-roof-letters.chain --chain lead -o lead.wav",
      "                                             and mended"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:written", "2:wrong usage, or the folder exists or cannot be made"})
final class DemoCommand implements Callable<Integer> {

  /** The files of the session, the one to begin with first. */
  static final List<String> FILES =
      List.of("to-review.chain", "tin-roof-letters.chain", "presets.chain", "answers.md");

  private static final String TAKES = "takes";
  private static final SampleKind SAMPLES = SampleKind.ofInteger(24);

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "The folder to make; it must not exist yet.")
  private Path folder;

  @Override
  public Integer call() throws IOException {
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException("`" + folder + "` exists already; name a folder that does not");
    }
    try {
      write();
    } catch (IOException e) {
      throw new IOException("`" + folder + "` cannot be written: " + reason(e), e);
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println("Wrote an invented session into " + folder + ":");
    out.println("  to-review.chain         one chain with many faults");
    out.println("  tin-roof-letters.chain  a whole session with buses and sends");
    out.println("  presets.chain           what the two of them import");
    out.println("  answers.md              what a reviewer finds in to-review.chain");
    out.println("  takes/                  what is sung and played, each with faults to mend");
    out.println("Try next:");
    out.println("  chainwright check " + folder.resolve("to-review.chain"));
    out.println("  chainwright check " + folder);
    out.println("  chainwright measure " + folder.resolve("takes/lead.wav"));
    return ChainwrightCommand.CLEAN;
  }

  /** Says what went wrong without the name of the draft, which is none that the person gave. */
  private static String reason(IOException trouble) {
    if (trouble.getCause() instanceof IOException cause) {
      return reason(cause);
    }
    if (trouble instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (trouble instanceof FileAlreadyExistsException left) {
      return "`" + left.getFile() + "` is left of a run that was cut short; delete it";
    }
    if (trouble instanceof FileSystemException system) {
      return system.getReason() == null
          ? "the folder around it takes no other"
          : system.getReason();
    }
    String message = trouble.getMessage();
    return message == null ? trouble.getClass().getSimpleName() : message;
  }

  /** Writes beside the folder and moves into place, so that a broken write leaves nothing. */
  private void write() throws IOException {
    Path target = folder.toAbsolutePath().normalize();
    Path parent = target.getParent();
    if (parent == null) {
      throw new IOException("it has no folder around it");
    }
    Files.createDirectories(parent);
    Path draft = parent.resolve("." + target.getFileName() + ".draft");
    Files.createDirectory(draft);
    try {
      for (String name : FILES) {
        writeText(name, draft.resolve(name));
      }
      Files.createDirectory(draft.resolve(TAKES));
      for (Map.Entry<String, double[][]> take : DemoTakes.render().entrySet()) {
        writeTake(draft.resolve(TAKES).resolve(take.getKey() + ".wav"), take.getValue());
      }
      Files.move(draft, target);
    } finally {
      if (Files.exists(draft)) {
        deleteAll(draft);
      }
    }
  }

  private static void writeText(String name, Path file) throws IOException {
    try (InputStream text = DemoCommand.class.getResourceAsStream("/chainwright/demo/" + name)) {
      if (text == null) {
        throw new FileNotFoundException(name + " is not in this build");
      }
      Files.copy(text, file);
    }
  }

  private static void writeTake(Path file, double[][] channels) throws IOException {
    AudioFormat format =
        AudioFormat.of(FileKind.WAVE, DemoTakes.SAMPLE_RATE_HZ, channels.length, SAMPLES);
    try (AudioWriter writer = AudioFiles.create(file, format, false)) {
      writer.write(channels, 0, channels[0].length);
      writer.finish();
    }
  }

  /** Deletes the draft, what stands in a folder before the folder. */
  private static void deleteAll(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }
}
