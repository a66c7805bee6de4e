package chainwright.app.cli;

import chainwright.app.workspace.ChainFiles;
import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.notation.text.BinaryText;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.regex.PatternSyntaxException;

/** The chain files that are named on the command line, read or refused with a reason. */
final class NamedFiles {

  private static final int MAX_MEBIBYTES = 4;
  private static final int MAX_DEPTH = 12;
  private static final String NO_TEXT = " is no text; name a chain file";

  private NamedFiles() {}

  /**
   * Finds the files that are named.
   *
   * @param names files, folders whose chain files are meant, and patterns such as {@code
   *     takes/*.chain} for a shell that leaves them as they are
   * @param complain told a sentence for each name that names nothing, and each folder that cannot
   *     be looked into
   * @return the files; one that is named twice stands once
   */
  static List<Path> find(List<String> names, Consumer<String> complain) {
    Set<Path> files = new LinkedHashSet<>();
    for (String name : names) {
      try {
        files.addAll(named(name, complain));
      } catch (IOException e) {
        complain.accept(e.getMessage());
      } catch (InvalidPathException e) {
        complain.accept("`" + name + "` is no name of a file: " + e.getReason());
      }
    }
    return List.copyOf(files);
  }

  private static List<Path> named(String name, Consumer<String> complain) throws IOException {
    if (isPattern(name)) {
      return matching(name, complain);
    }
    Path path = Path.of(name);
    if (!Files.isDirectory(path)) {
      return List.of(path);
    }
    ChainFiles.Search search = ChainFiles.search(List.of(path));
    for (Path refused : search.refused()) {
      complain.accept("`" + refused + "` cannot be looked into: permission denied");
    }
    if (search.isCut()) {
      complain.accept(
          "the folder `" + path + "` holds too much to look at all of it; name folders in it");
    }
    if (search.files().isEmpty() && search.refused().isEmpty()) {
      throw new IOException(
          "the folder `"
              + path
              + "` holds no file that ends in "
              + ChainFiles.ENDING
              + new SeemingFile(path)
                  .firstRecording()
                  .map(one -> "; recordings such as `" + one + "` are for `chainwright measure`")
                  .orElse(""));
    }
    return search.files();
  }

  private static boolean isPattern(String name) {
    return name.matches(".*[*?\\[{].*") && !exists(name);
  }

  private static boolean exists(String name) {
    try {
      return Files.exists(Path.of(name), LinkOption.NOFOLLOW_LINKS);
    } catch (InvalidPathException noFile) {
      return false;
    }
  }

  private static List<Path> matching(String pattern, Consumer<String> complain) throws IOException {
    int wild = pattern.split("[*?\\[{]", 2)[0].length();
    int slash = pattern.lastIndexOf('/', wild);
    Path start = Path.of(slash < 0 ? "" : pattern.substring(0, slash + 1));
    Set<Path> files = new TreeSet<>();
    try {
      PathMatcher matcher = FileSystems.getDefault().getPathMatcher("glob:" + pattern);
      Files.walkFileTree(
          start,
          EnumSet.noneOf(FileVisitOption.class),
          MAX_DEPTH,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              if (attributes.isRegularFile() && matcher.matches(file)) {
                files.add(file);
              }
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException failure) {
              complain.accept(String.valueOf(FileTrouble.of(file, failure).getMessage()));
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (PatternSyntaxException e) {
      throw new IOException("`" + pattern + "` is no pattern: " + e.getDescription(), e);
    }
    if (files.isEmpty()) {
      throw new IOException("no file matches `" + pattern + "`");
    }
    return List.copyOf(files);
  }

  /**
   * Reads a file as a whole.
   *
   * @param file the file
   * @return its text
   * @throws IOException if it is no text that can be read; the message is a sentence for the person
   *     who named it
   */
  static String read(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException(new SeemingFile(file).insteadOfAChain().orElseThrow());
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new IOException("`" + file + "` is no regular file");
    }
    try (InputStream bytes = Files.newInputStream(file)) {
      return read("`" + file + "`", bytes);
    } catch (FileSystemException e) {
      throw FileTrouble.of(file, e);
    } catch (IOException e) {
      throw new SeemingFile(file)
          .insteadOfAChain()
          .map(sentence -> new IOException(sentence, e))
          .orElse(e);
    }
  }

  /**
   * Reads a text as a whole.
   *
   * @param name what it is called in a message
   * @param bytes its bytes
   * @return the text
   * @throws IOException if it is no text, or too large
   */
  static String read(String name, InputStream bytes) throws IOException {
    byte[] all = bytes.readNBytes((MAX_MEBIBYTES << 20) + 1);
    if (all.length > MAX_MEBIBYTES << 20) {
      throw new IOException(
          name + " is larger than " + MAX_MEBIBYTES + " MiB, which no chain file is");
    }
    String text = decoded(name, all);
    if (BinaryText.find(text).isPresent()) {
      throw new IOException(name + NO_TEXT);
    }
    return text;
  }

  private static String decoded(String name, byte[] bytes) throws IOException {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      boolean isText = BinaryText.find(new String(bytes, StandardCharsets.UTF_8)).isEmpty();
      throw new IOException(
          name + (isText ? " is not written in UTF-8; save it as such" : NO_TEXT), e);
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
    read(file);
    return workspace
        .document(DocumentPath.ofFile(file))
        .orElseThrow(() -> new IOException("`" + file + "` cannot be read"));
  }
}
