package chainwright.app.lsp.wire;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Takes messages from a stream: a header whose lines end in CR LF, an empty line, then as many
 * bytes as the header's {@code Content-Length} says.
 *
 * <p>Source: Language Server Protocol 3.17, "Base Protocol".
 */
final class MessageStream {

  private static final String LENGTH = "content-length:";
  private static final int BUFFERED = 1 << 16;
  private static final int MAX_TRUSTED = 1 << 20;

  private final InputStream in;
  private final byte[] buffer = new byte[BUFFERED];
  private int position;
  private int limit;

  MessageStream(InputStream in) {
    this.in = in;
  }

  /** What came next in the stream: a body, or a header without a length, which has none. */
  record Framed(Optional<String> body) {}

  /** Waits for the next message; empty when the stream has ended. */
  Optional<Framed> next() throws IOException {
    int length = -1;
    while (true) {
      Optional<String> line = line();
      if (line.isEmpty()) {
        return Optional.empty();
      }
      String header = line.get();
      if (header.isEmpty()) {
        break;
      }
      if (header.regionMatches(true, 0, LENGTH, 0, LENGTH.length())) {
        length = number(header.substring(LENGTH.length()).strip());
      }
    }
    if (length < 0) {
      return Optional.of(new Framed(Optional.empty()));
    }
    return body(length).map(body -> new Framed(Optional.of(body)));
  }

  /** Grows with what has come, since a header may promise more than there is memory. */
  private Optional<String> body(int length) throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream(Math.min(length, MAX_TRUSTED));
    while (body.size() < length) {
      if (!fill()) {
        return Optional.empty();
      }
      int taken = Math.min(length - body.size(), limit - position);
      body.write(buffer, position, taken);
      position += taken;
    }
    return Optional.of(body.toString(StandardCharsets.UTF_8));
  }

  private static int number(String digits) {
    try {
      return Integer.parseInt(digits);
    } catch (NumberFormatException e) {
      return -1;
    }
  }

  private Optional<String> line() throws IOException {
    StringBuilder line = new StringBuilder();
    while (true) {
      if (!fill()) {
        return Optional.empty();
      }
      char c = (char) (buffer[position++] & 0xff);
      if (c == '\n') {
        return Optional.of(line.toString());
      }
      if (c != '\r') {
        line.append(c);
      }
    }
  }

  /** Sees to it that the buffer holds something; false when the stream has ended. */
  private boolean fill() throws IOException {
    if (position == limit) {
      position = 0;
      limit = Math.max(0, in.read(buffer));
    }
    return position < limit;
  }
}
