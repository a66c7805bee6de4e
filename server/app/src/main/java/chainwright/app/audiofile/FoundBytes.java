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
    if (isText(start, held)) {
      return "a text";
    }
    return "a file that begins with the bytes "
        + HexFormat.ofDelimiter(" ").formatHex(start, 0, held);
  }

  /** Whether no byte is a control character but the ends of lines and tabs. */
  private static boolean isText(byte[] start, int held) {
    for (int i = 0; i < held; i++) {
      boolean isControl = start[i] >= 0 && start[i] < ' ' && "\t\r\n".indexOf(start[i]) < 0;
      if (isControl || start[i] == 0x7f) {
        return false;
      }
    }
    return held > 0;
  }
}
