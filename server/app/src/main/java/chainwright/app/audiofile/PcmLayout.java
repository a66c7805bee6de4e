package chainwright.app.audiofile;

/**
 * Where in a file its samples stand, frame after frame.
 *
 * @param format what they are
 * @param code how one stands in bytes
 * @param start the place of the first [byte]
 * @param frames how many the file holds
 */
record PcmLayout(AudioFormat format, SampleCode code, long start, long frames) {

  int frameBytes() {
    return code.bytes() * format.channels();
  }
}
