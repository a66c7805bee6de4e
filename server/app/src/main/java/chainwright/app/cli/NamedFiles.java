package chainwright.app.cli;

import chainwright.app.workspace.ChainFiles;
import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The chain files that are named on the command line, read or refused with a reason. */
final class NamedFiles {

  private static final long MAX_MEBIBYTES = 4;

  private NamedFiles() {}

  /**
   * Puts the chain files under folders in the folders' places.
   *
   * @param paths files and folders
   * @return the files; one that is named twice stands once
   * @throws IOException if a folder holds no chain file
   */
  static List<Path> files(List<Path> paths) throws IOException {
    List<Path> files = new ArrayList<>();
    for (Path path : paths) {
      if (Files.isDirectory(path)) {
        List<Path> under = ChainFiles.under(List.of(path));
        if (under.isEmpty()) {
          throw new IOException(
              "the folder `" + path + "` holds no file that ends in " + ChainFiles.ENDING);
        }
        files.addAll(under);
      } else {
        files.add(path);
      }
    }
    return files.stream().distinct().toList();
  }

  /**
   * Makes sure that a file is a text that can be read.
   *
   * @param file the file
   * @throws IOException if it is not; the message is a sentence for the person who named it
   */
  private static void require(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("`" + file + "` is a folder; name a file in it");
    }
    if (!Files.exists(file)) {
      throw new IOException("`" + file + "` does not exist");
    }
    if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
      throw new IOException("`" + file + "` cannot be read");
    }
    if (Files.size(file) > MAX_MEBIBYTES << 20) {
      throw new IOException(
          "`" + file + "` is larger than " + MAX_MEBIBYTES + " MiB, which no chain file is");
    }
    byte[] bytes = Files.readAllBytes(file);
    for (byte one : bytes) {
      if (one == 0) {
        throw new IOException("`" + file + "` is no text: it holds zero bytes");
      }
    }
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
    } catch (CharacterCodingException e) {
      throw new IOException("`" + file + "` is not written in UTF-8", e);
    }
  }

  /**
   * Opens a file.
   *
   * @param file the file
   * @param workspace reads it, and what it imports
   * @return its text
   * @throws IOException if it cannot be read; the message is a sentence for the person who named it
   */
  static DocumentSnapshot open(Path file, Workspace workspace) throws IOException {
    require(file);
    return workspace
        .document(DocumentPath.ofFile(file))
        .orElseThrow(() -> new IOException("`" + file + "` cannot be read"));
  }
}
