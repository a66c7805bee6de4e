package chainwright.app.workspace;

import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Files on disk, each read again only when its date or size has changed. */
final class DiskFiles {

  /** A larger file is no text written by hand; it is left unread so that memory stays bounded. */
  private static final long MAX_BYTES = 4L << 20;

  private record Stamp(long modifiedMillis, long size) {}

  private record Cached(Stamp stamp, DocumentSnapshot document) {}

  private final Map<DocumentPath, Cached> cache = new ConcurrentHashMap<>();
  private final SectionReader reader;

  DiskFiles(SectionReader reader) {
    this.reader = reader;
  }

  /**
   * Reads a file.
   *
   * @param path which file
   * @return its state, the same object while the file has not changed; empty if it cannot be read
   */
  Optional<DocumentSnapshot> read(DocumentPath path) {
    Optional<Path> file = path.file();
    if (file.isEmpty()) {
      return Optional.empty();
    }
    try {
      BasicFileAttributes attributes = Files.readAttributes(file.get(), BasicFileAttributes.class);
      if (!attributes.isRegularFile() || attributes.size() > MAX_BYTES) {
        cache.remove(path);
        return Optional.empty();
      }
      Stamp stamp = new Stamp(attributes.lastModifiedTime().toMillis(), attributes.size());
      Cached known = cache.get(path);
      if (known != null && known.stamp().equals(stamp)) {
        return Optional.of(known.document());
      }
      // Bytes that are no UTF-8 become replacement characters, which the parser reports.
      String text = new String(Files.readAllBytes(file.get()), StandardCharsets.UTF_8);
      DocumentSnapshot document =
          known == null
              ? DocumentSnapshot.ofDisk(path, text, reader)
              : known.document().withDiskText(text);
      cache.put(path, new Cached(stamp, document));
      return Optional.of(document);
    } catch (IOException e) {
      cache.remove(path);
      return Optional.empty();
    }
  }
}
