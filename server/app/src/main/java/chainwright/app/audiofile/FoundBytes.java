package chainwright.app.audiofile;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** Says in words what the beginning of a file looks like that cannot be read. */
final class FoundBytes {

  private FoundBytes() {}

  static String describe(byte[] start, int held) {
    String text = new String(start, 0, held, StandardCharsets.ISO_8859_1);
    if (text.startsWith("ID3") || (held > 1 && start[0] == -1 && (start[1] & 0xe0) == 0xe0)) {
      return "what looks like MPEG audio";
    }
    if (text.startsWith("RIFX")) {
      return "a WAV file with the high bytes first (RIFX)";
    }
    if (text.startsWith("riff")) {
      return "a Wave64 file";
    }
    if (text.startsWith("caff")) {
      return "a CAF file";
    }
    if (text.startsWith("ftyp", 4)) {
      return "an MP4 file";
    }
    return "a file that begins with the bytes "
        + HexFormat.ofDelimiter(" ").formatHex(start, 0, held);
  }
}
