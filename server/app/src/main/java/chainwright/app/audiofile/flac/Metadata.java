package chainwright.app.audiofile.flac;

import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * What stands before the first frame. Of its blocks only what the samples are is read; seek tables,
 * tags and pictures are passed over.
 *
 * <p>Source: RFC 9639, section 8.
 *
 * @param info what the samples are
 * @param channelMask the speakers as in {@code WAVEFORMATEXTENSIBLE}, section 8.6.2, or 0
 * @param end where the first frame begins [byte]
 */
record Metadata(StreamInfo info, int channelMask, long end) {

  private static final String MARK = "fLaC";
  private static final int STREAM_INFO = 0;
  private static final int COMMENT = 4;
  private static final int FORBIDDEN = 127;
  private static final int LAST = 1 << 31;
  private static final int MOST_MASK_DIGITS = 12;
  private static final int MOST_COMMENT_BYTES = 1 << 20;
  private static final String MASK_FIELD = "WAVEFORMATEXTENSIBLE_CHANNEL_MASK=";

  /** Returns where the mark stands: at the beginning, or after an ID3 tag; -1 if there is none. */
  static long findMark(SeekableBytes source) throws IOException {
    long place = 0;
    byte[] start = new byte[10];
    for (int tags = 0; tags < 4 && place < source.size(); tags++) {
      source.seek(place);
      int held = source.read(start, 0, start.length);
      if (held >= 4 && new String(start, 0, 4, StandardCharsets.ISO_8859_1).equals(MARK)) {
        return place;
      }
      if (held < 10 || start[0] != 'I' || start[1] != 'D' || start[2] != '3') {
        return -1;
      }
      // The size has seven bits a byte; a footer of ten bytes is announced by a flag.
      int size = 0;
      for (int i = 6; i < 10; i++) {
        size = size << 7 | (start[i] & 0x7f);
      }
      place += 10L + size + ((start[5] & 0x10) != 0 ? 10 : 0);
    }
    return -1;
  }

  /** Reads the blocks after the mark. */
  static Metadata read(SeekableBytes source, long mark) throws IOException {
    long place = mark + MARK.length();
    StreamInfo info = null;
    int channelMask = 0;
    boolean isLast = false;
    while (!isLast) {
      source.seek(Math.min(place, source.size()));
      byte[] head = take(source, 4);
      isLast = head[0] < 0;
      int type = head[0] & 0x7f;
      int size = ByteBuffer.wrap(head).getInt() & 0xff_ffff;
      if (type == FORBIDDEN || (info == null) != (type == STREAM_INFO)) {
        throw new FlacException("the file does not begin with what its samples are");
      }
      if (type == STREAM_INFO) {
        info = StreamInfo.of(take(source, StreamInfo.BYTES));
      } else if (type == COMMENT) {
        byte[] comment = new byte[Math.min(size, MOST_COMMENT_BYTES)];
        int held = source.read(comment, 0, comment.length);
        channelMask = channelMask(ByteBuffer.wrap(comment, 0, held));
      }
      place += 4L + size;
    }
    if (info == null) {
      throw new FlacException("the file does not say what its samples are");
    }
    return new Metadata(info, channelMask, Math.min(place, source.size()));
  }

  /** Writes what {@link #read} reads. */
  static byte[] toBytes(StreamInfo info, int channelMask) {
    byte[] field =
        String.format("%s0x%04x", MASK_FIELD, channelMask).getBytes(StandardCharsets.US_ASCII);
    // No vendor, one field.
    int commentBytes = channelMask == 0 ? 0 : 4 + 4 + 4 + 4 + field.length;
    ByteBuffer out = ByteBuffer.allocate(4 + 4 + StreamInfo.BYTES + commentBytes);
    out.put(MARK.getBytes(StandardCharsets.US_ASCII));
    out.putInt((channelMask == 0 ? LAST : 0) | STREAM_INFO << 24 | StreamInfo.BYTES);
    out.put(info.toBytes());
    if (channelMask != 0) {
      out.putInt(LAST | COMMENT << 24 | commentBytes - 4);
      out.order(ByteOrder.LITTLE_ENDIAN).putInt(0).putInt(1).putInt(field.length).put(field);
    }
    return out.array();
  }

  private static byte[] take(SeekableBytes source, int count) throws IOException {
    byte[] bytes = new byte[count];
    if (source.read(bytes, 0, count) < count) {
      throw new FlacException("the file ends before its first frame");
    }
    return bytes;
  }

  /** A vendor's name and fields, each with its length in front. */
  private static int channelMask(ByteBuffer comment) {
    comment.order(ByteOrder.LITTLE_ENDIAN);
    if (!skip(comment) || comment.remaining() < 4) {
      return 0;
    }
    comment.getInt();
    while (comment.remaining() >= 4) {
      int start = comment.position() + 4;
      if (!skip(comment)) {
        return 0;
      }
      byte[] field =
          new byte[Math.min(comment.position() - start, MASK_FIELD.length() + MOST_MASK_DIGITS)];
      comment.get(start, field);
      String text = new String(field, StandardCharsets.ISO_8859_1);
      if (text.toUpperCase(Locale.ROOT).startsWith(MASK_FIELD)) {
        return parse(text.substring(MASK_FIELD.length()));
      }
    }
    return 0;
  }

  private static boolean skip(ByteBuffer comment) {
    if (comment.remaining() < 4) {
      return false;
    }
    int length = comment.getInt();
    if (length < 0 || length > comment.remaining()) {
      return false;
    }
    comment.position(comment.position() + length);
    return true;
  }

  private static int parse(String number) {
    try {
      return Integer.decode(number.strip());
    } catch (NumberFormatException e) {
      return 0;
    }
  }
}
