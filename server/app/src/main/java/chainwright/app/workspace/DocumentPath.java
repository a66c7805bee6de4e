package chainwright.app.workspace;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Which file a document is, however its address was spelt: {@code file:///C:/a.chain} and {@code
 * file:///c%3A/a.chain} are equal. The only class that reads and writes URIs.
 *
 * @param key the absolute path with {@code /} and a small drive letter, such as {@code
 *     /c:/takes/a.chain}; for a document that is no file, its whole URI
 */
public record DocumentPath(String key) {

  private static final String UNRESERVED = "-._~/:!$&'()*+,;=@";

  /**
   * Reads a URI as an editor sends it. This never fails.
   *
   * @param uri any URI
   * @return the document's path
   */
  public static DocumentPath ofUri(String uri) {
    if (!uri.regionMatches(true, 0, "file:", 0, 5)) {
      return new DocumentPath(uri);
    }
    String rest = uri.substring(5);
    String host = "";
    if (rest.startsWith("//")) {
      int slash = rest.indexOf('/', 2);
      host = slash < 0 ? rest.substring(2) : rest.substring(2, slash);
      rest = slash < 0 ? "/" : rest.substring(slash);
    }
    String path = normalized(decoded(rest));
    return new DocumentPath(
        host.isEmpty() || host.equalsIgnoreCase("localhost")
            ? path
            : "//" + host.toLowerCase(Locale.ROOT) + path);
  }

  /**
   * Takes a file of this machine.
   *
   * @param file its path; a relative one counts from the working folder
   * @return the document's path
   */
  public static DocumentPath ofFile(Path file) {
    String path = file.toAbsolutePath().normalize().toString().replace('\\', '/');
    if (path.startsWith("//")) {
      return new DocumentPath(path);
    }
    return new DocumentPath(normalized(path.startsWith("/") ? path : "/" + path));
  }

  /**
   * Takes the key of a file as the notation makes it from an import.
   *
   * @param key an absolute path with {@code /}, with any drive letter
   * @return the document's path
   */
  public static DocumentPath ofKey(String key) {
    if (key.startsWith("//") || !(key.startsWith("/") || key.matches("[A-Za-z]:/.*"))) {
      return new DocumentPath(key);
    }
    return new DocumentPath(normalized(key));
  }

  /**
   * Returns the file on this machine.
   *
   * @return the path, or empty if the document is no file or has a name that cannot be one here
   */
  public Optional<Path> file() {
    if (!key.startsWith("/")) {
      return Optional.empty();
    }
    boolean isBare = hasDrive(key) && File.separatorChar == '\\';
    try {
      return Optional.of(Path.of(isBare ? key.substring(1) : key));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /**
   * Writes the URI, for a document whose own spelling no editor has given.
   *
   * @return the URI
   */
  public String toUri() {
    if (!key.startsWith("/")) {
      return key;
    }
    StringBuilder uri = new StringBuilder(key.startsWith("//") ? "file:" : "file://");
    for (byte b : key.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xff);
      boolean isPlain = c < 0x80 && (Character.isLetterOrDigit(c) || UNRESERVED.indexOf(c) >= 0);
      if (isPlain) {
        uri.append(c);
      } else {
        uri.append('%')
            .append(Character.toUpperCase(Character.forDigit(c >> 4, 16)))
            .append(Character.toUpperCase(Character.forDigit(c & 15, 16)));
      }
    }
    return uri.toString();
  }

  /**
   * Returns the last part of the path, such as {@code a.chain}.
   *
   * @return the name
   */
  public String name() {
    return key.substring(key.lastIndexOf('/') + 1);
  }

  /*
   * Written out, as in the other records that are compared while the server starts: what the compiler
   * gives a record makes some twenty classes at its first use.
   */

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof DocumentPath path && key.equals(path.key);
  }

  @Override
  public int hashCode() {
    return key.hashCode();
  }

  private static boolean hasDrive(String path) {
    return path.length() > 2
        && Character.isLetter(path.charAt(1))
        && path.charAt(2) == ':'
        && (path.length() == 3 || path.charAt(3) == '/');
  }

  private static String normalized(String path) {
    Deque<String> parts = new ArrayDeque<>();
    for (String part : path.split("/", -1)) {
      if (part.equals("..")) {
        parts.pollLast();
      } else if (!part.isEmpty() && !part.equals(".")) {
        parts.addLast(part);
      }
    }
    String joined = "/" + String.join("/", parts);
    return hasDrive(joined)
        ? "/" + Character.toLowerCase(joined.charAt(1)) + joined.substring(2)
        : joined;
  }

  private static String decoded(String text) {
    if (text.indexOf('%') < 0) {
      return text;
    }
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    ByteArrayOutputStream plain = new ByteArrayOutputStream(bytes.length);
    for (int i = 0; i < bytes.length; i++) {
      int high = i + 2 < bytes.length ? Character.digit(bytes[i + 1], 16) : -1;
      int low = i + 2 < bytes.length ? Character.digit(bytes[i + 2], 16) : -1;
      if (bytes[i] == '%' && high >= 0 && low >= 0) {
        plain.write(high * 16 + low);
        i += 2;
      } else {
        plain.write(bytes[i]);
      }
    }
    return plain.toString(StandardCharsets.UTF_8);
  }
}
