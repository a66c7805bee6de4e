package chainwright.app.audiofile.flac;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The MD5 sum of samples: interleaved, in whole bytes, low byte first.
 *
 * <p>Source: RFC 9639, section 8.2.
 */
final class SampleSum {

  private final MessageDigest digest;
  private final int bytesEach;
  private byte[] bytes = new byte[0];

  SampleSum(int bits) {
    this.bytesEach = (bits + 7) / 8;
    try {
      this.digest = MessageDigest.getInstance("MD5");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has MD5", e);
    }
  }

  void add(long[][] planes, int count) {
    int stride = bytesEach * planes.length;
    if (bytes.length < stride * count) {
      bytes = new byte[stride * count];
    }
    for (int channel = 0; channel < planes.length; channel++) {
      long[] plane = planes[channel];
      int at = channel * bytesEach;
      for (int i = 0; i < count; i++, at += stride) {
        long sample = plane[i];
        for (int b = 0; b < bytesEach; b++) {
          bytes[at + b] = (byte) (sample >> (8 * b));
        }
      }
    }
    digest.update(bytes, 0, stride * count);
  }

  /** The sum of all that was added; what is added after it begins a new sum. */
  String digits() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
