package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * A file that is being written beside the one it will become.
 *
 * <p>It lies in the same folder, since only there a move is one step. A program that is stopped
 * (Ctrl-C) removes it on its way out; one that is killed leaves it, and its name says what it is.
 */
final class OutputDraft {

  /** What the name of a draft ends in. */
  static final String ENDING = ".unfinished";

  private final Path target;
  private final Path draft;
  private final boolean mayReplace;
  private final FileChannel channel;

  private OutputDraft(Path target, Path draft, boolean mayReplace, FileChannel channel) {
    this.target = target;
    this.draft = draft;
    this.mayReplace = mayReplace;
    this.channel = channel;
  }

  /** Makes an empty draft. */
  static OutputDraft begin(Path target, boolean mayReplace) throws IOException {
    String name = target.toString();
    if (Files.isDirectory(target)) {
      throw new OutputFileException(name, "a file's name", "a folder", "name a file in it");
    }
    if (!mayReplace && Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      throw exists(name);
    }
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      throw new OutputFileException(name, "a file", "a device or a pipe", "name a file");
    }
    Path folder = target.toAbsolutePath().resolveSibling("");
    if (!Files.isDirectory(folder)) {
      throw new OutputFileException(
          name, "the folder `" + folder + "`", "none", "make it, or name another one");
    }
    String mark = UUID.randomUUID().toString().substring(0, 8);
    Path draft = target.resolveSibling(target.getFileName() + "." + mark + ENDING);
    try {
      FileChannel channel =
          FileChannel.open(draft, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
      draft.toFile().deleteOnExit();
      return new OutputDraft(target, draft, mayReplace, channel);
    } catch (IOException e) {
      throw new OutputFileException(
          "`" + name + "` cannot be written: " + reason(e) + "; write to another folder", e);
    }
  }

  private static OutputFileException exists(String name) {
    return new OutputFileException(
        name, "a new file", "one that is there already", "--force replaces it");
  }

  FileChannel channel() {
    return channel;
  }

  String name() {
    return target.toString();
  }

  /** Moves the draft, which is complete, into the file's place. */
  void commit() throws IOException {
    // The name must not become visible before the content is on the disk.
    channel.force(true);
    channel.close();
    if (mayReplace) {
      Files.move(
          draft, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } else {
      moveUnlessThere();
    }
  }

  /** A move replaces what is there; a second name for the draft does not. */
  private void moveUnlessThere() throws IOException {
    try {
      Files.createLink(target, draft);
      Files.delete(draft);
    } catch (FileAlreadyExistsException e) {
      throw exists(name());
    } catch (FileSystemException | UnsupportedOperationException e) {
      // Some file systems know no second names; there, looking first has to do.
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        throw exists(name());
      }
      Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
    }
  }

  /** Removes the draft, if there still is one. */
  void discard() throws IOException {
    channel.close();
    Files.deleteIfExists(draft);
  }

  /** Says what went wrong, without the name of the file that Java puts in front. */
  static String reason(IOException trouble) {
    if (trouble instanceof FileSystemException system && system.getReason() != null) {
      return system.getReason();
    }
    String message = trouble.getMessage();
    return message == null ? trouble.getClass().getSimpleName() : message;
  }
}
