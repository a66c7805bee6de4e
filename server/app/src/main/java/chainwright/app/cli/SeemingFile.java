package chainwright.app.cli;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.DamagedAudioException;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.UnsupportedAudioException;
import chainwright.app.workspace.ChainFiles;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.SourceFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Says what a file seems to be that a command was given by mistake, and which command takes it.
 *
 * @param file the file as the person named it
 */
record SeemingFile(Path file) {

  /**
   * Says what it is that is no chain file.
   *
   * @return a sentence; empty if it is neither a folder nor a recording
   */
  Optional<String> insteadOfAChain() {
    if (Files.isDirectory(file)) {
      return Optional.of(
          "`"
              + file
              + "` is a folder"
              + ChainFiles.search(List.of(file)).files().stream()
                  .findFirst()
                  .map(
                      one ->
                          "; name a chain file in it, such as `"
                              + one
                              + "`; `chainwright check "
                              + file
                              + "` judges all of them")
                  .orElse(" without a chain file; name one"));
    }
    return recording()
        .map(
            what ->
                "`"
                    + file
                    + "` is a recording"
                    + what
                    + ", not a chain file; `chainwright measure "
                    + file
                    + "` measures it, `chainwright render CHAINFILE --take "
                    + file
                    + "` sends it through a chain");
  }

  /**
   * Says what it is that is no recording.
   *
   * @return a sentence; empty if it is neither a folder nor a text
   */
  Optional<String> insteadOfARecording() {
    if (Files.isDirectory(file)) {
      return Optional.of(
          "`"
              + file
              + "` is a folder"
              + firstRecording()
                  .map(one -> "; name the recordings in it, such as `" + one + "`")
                  .orElse(" without a recording; name one"));
    }
    Optional<String> text = text();
    if (text.isEmpty()) {
      return Optional.empty();
    }
    boolean isChain =
        !SourceFile.of("", text.get(), new SectionReader(Catalogue.load())).definitions().isEmpty();
    return Optional.of(
        isChain
            ? "`"
                + file
                + "` is a chain file, not a recording; `chainwright check "
                + file
                + "` judges it, `chainwright render "
                + file
                + " -o OUT` makes a recording of it"
            : "`" + file + "` is a text, not a recording");
  }

  /** What kind of recording it is, in brackets; empty if it is none. */
  private Optional<String> recording() {
    try (AudioReader reader = AudioFiles.open(file)) {
      return Optional.of(" (" + reader.format().file().label() + ")");
    } catch (DamagedAudioException | UnsupportedAudioException unreadable) {
      return Optional.of(" that cannot be read");
    } catch (IOException none) {
      return Optional.empty();
    }
  }

  private Optional<String> text() {
    try {
      return Optional.of(NamedFiles.read(file));
    } catch (IOException none) {
      return Optional.empty();
    }
  }

  /** The first file in the folder whose name says a recording; empty where there is none. */
  Optional<Path> firstRecording() {
    try (Stream<Path> files = Files.list(file)) {
      return files.filter(one -> FileKind.ofName(one).isPresent()).sorted().findFirst();
    } catch (IOException none) {
      return Optional.empty();
    }
  }
}
