package chainwright.app.render;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.WriteSummary;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * A folder of stems: in it one for each bus, and in that a file for each chain or bus that goes to
 * it, as it comes in. The files of one folder, added, are what the bus gets.
 *
 * <p>It is written under another name beside its place, and moved there when it is complete.
 */
final class StemFolder implements AutoCloseable {

  private final Path target;
  private final Path draft;
  private final AudioFormat format;
  private final Map<Path, AudioWriter> writers = new LinkedHashMap<>();
  private final List<Path> folders = new ArrayList<>();
  private Optional<StemSummary> summary = Optional.empty();

  private StemFolder(Path target, Path draft, AudioFormat format) {
    this.target = target;
    this.draft = draft;
    this.format = format;
  }

  /**
   * Begins a folder.
   *
   * @param target its place, where nothing may be
   * @param format what its files hold; each has channels of its own
   * @return the folder, empty
   * @throws IOException if there is something, or it cannot be made
   */
  static StemFolder begin(Path target, AudioFormat format) throws IOException {
    if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException(
          "`" + target + "` exists already; name a folder for stems that does not");
    }
    String mark = UUID.randomUUID().toString().substring(0, 8);
    Path draft =
        target.toAbsolutePath().resolveSibling(target.getFileName() + "." + mark + ".unfinished");
    StemFolder folder = new StemFolder(target, draft, format);
    folder.makeFolder(draft);
    return folder;
  }

  private void makeFolder(Path folder) throws IOException {
    try {
      Files.createDirectory(folder);
    } catch (FileSystemException e) {
      String reason = e.getReason() == null ? "its parent folder is not there" : e.getReason();
      throw new IOException("`" + target + "` cannot be made: " + reason, e);
    }
    folder.toFile().deleteOnExit();
    folders.add(folder);
  }

  /**
   * Begins a stem.
   *
   * @param bus the bus that it goes to
   * @param from the chain or bus that it comes from
   * @param channels how many channels the bus has
   * @return writes it; the folder finishes and closes it
   * @throws IOException if it cannot be made
   */
  AudioWriter add(String bus, String from, int channels) throws IOException {
    Path folder = draft.resolve(bus);
    if (!folders.contains(folder)) {
      makeFolder(folder);
    }
    Path file = folder.resolve(from + format.file().endings().get(0));
    AudioFormat own =
        AudioFormat.of(format.file(), format.sampleRateHz(), channels, format.samples());
    AudioWriter writer = AudioFiles.create(file, own, false);
    writers.put(file, writer);
    return writer;
  }

  /** Completes all files, still under the other name. */
  void finish() throws IOException {
    long clipped = 0;
    for (AudioWriter writer : writers.values()) {
      WriteSummary written = writer.finish();
      clipped += written.clippedSamples();
    }
    summary = Optional.of(new StemSummary(target, writers.size(), clipped));
  }

  /** Moves the folder, which is finished, into its place. */
  StemSummary commit() throws IOException {
    StemSummary done =
        summary.orElseThrow(() -> new IllegalStateException("the folder is unfinished"));
    Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
    writers.clear();
    folders.clear();
    return done;
  }

  /** Takes back what has not been moved into place. */
  @Override
  public void close() throws IOException {
    for (Map.Entry<Path, AudioWriter> entry : writers.entrySet()) {
      entry.getValue().close();
      Files.deleteIfExists(entry.getKey());
    }
    for (int i = folders.size() - 1; i >= 0; i--) {
      Files.deleteIfExists(folders.get(i));
    }
  }
}
