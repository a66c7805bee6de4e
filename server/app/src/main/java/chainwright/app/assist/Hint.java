package chainwright.app.assist;

/**
 * A remark that an editor shows between the words of a text.
 *
 * @param kind what it is about
 * @param offset where it is shown, from the file's start
 * @param label the remark, a few words
 * @param tooltip what else to know and where it comes from, in Markdown
 * @param insertion what may be written there to say the same; empty where nothing can be
 */
public record Hint(Kind kind, int offset, String label, String tooltip, String insertion) {

  /** What a remark is about. */
  public enum Kind {
    /** The values that hold because nothing is written. */
    OMITTED,
    /** The note of a frequency. */
    NOTES,
    /** The width of a quality factor in octaves. */
    OCTAVES,
    /** Where a high- or low-pass is really 3 dB down. */
    CORNERS
  }

  /**
   * Returns the same remark about a text that begins elsewhere.
   *
   * @param by how much is added to its offset
   * @return the copy
   */
  Hint plus(int by) {
    return new Hint(kind, offset + by, label, tooltip, insertion);
  }
}
