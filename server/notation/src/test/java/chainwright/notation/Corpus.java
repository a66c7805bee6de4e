package chainwright.notation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The example chains and the conformance corpus of the folder {@code grammar}. */
public final class Corpus {

  /** Every form of the notation, right and wrong, in a few lines. */
  private static final List<String> SAMPLES =
      List.of(
          """
          # Ferry night
          import "presets.chain"
          session “Ferry” {
            alignment 0dBu=-18dBFS # sine
          }
          preset   guard{
          high-pass 0.06 kHz 12dB/oct}
          """,
          """
          chain lead "Lead vocal" { source lead-vocal
            take "takes/a.wav" 0:12 to 0:48
              to vocals  fader −3 dB

            de-ess band 5.5kHz to 9kHz threshold -30dbfs
              note "before \\"the\\" compressor"
            bell 3100Hz –2.50 dB Q 2.2 as bite bypassed   # hurts
               … deliberate over-steep-slope "reason"
            >first line
            >  second line
            parallel { path "dry" { gain +2dB } }
            gate threshold -60 dBFS{ side-chain {
                 high-pass 120 Hz } }
          }
          """,
          """
          bus mix { max-true-peak -1 dBTP }

          }
          chain a {
            parallel {
              path "x
          }
          bell 3,1 kHz; Q2
          """);

  private Corpus() {}

  /**
   * Finds the files of a folder.
   *
   * @param folder the folder, below {@code grammar}, such as {@code corpus/right}
   * @return its {@code .chain} files in the order of their names; none if there is no such folder
   */
  public static List<Path> files(String folder) {
    Path root = root().resolve(folder);
    if (!Files.isDirectory(root)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(root)) {
      return files.filter(file -> file.toString().endsWith(".chain")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads every file.
   *
   * @return the texts of samples, examples and corpus
   */
  public static List<String> texts() {
    List<String> texts = new ArrayList<>(SAMPLES);
    for (String folder : List.of("examples", "corpus/right", "corpus/wrong")) {
      files(folder).forEach(file -> texts.add(read(file)));
    }
    return texts;
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @return its text, line ends as they are
   */
  public static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Looks for the folder {@code grammar} from the working folder upwards.
   *
   * @return the folder; one that does not exist if there is none
   */
  public static Path root() {
    Path start = Path.of("").toAbsolutePath();
    for (Path at = start; at != null; at = at.getParent()) {
      if (Files.isDirectory(at.resolve("grammar"))) {
        return at.resolve("grammar");
      }
    }
    return start.resolve("grammar");
  }
}
