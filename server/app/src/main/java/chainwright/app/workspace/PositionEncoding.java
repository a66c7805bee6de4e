package chainwright.app.workspace;

/** In which units an editor counts the characters of a line. */
public enum PositionEncoding {
  /** Bytes of UTF-8. */
  UTF_8 {
    @Override
    int unitsOf(int codePoint) {
      return codePoint < 0x80 ? 1 : codePoint < 0x800 ? 2 : codePoint < 0x10000 ? 3 : 4;
    }
  },
  /** Units of UTF-16, as in a Java string; what holds when nothing was agreed. */
  UTF_16 {
    @Override
    int unitsOf(int codePoint) {
      return Character.charCount(codePoint);
    }
  },
  /** Code points. */
  UTF_32 {
    @Override
    int unitsOf(int codePoint) {
      return 1;
    }
  };

  abstract int unitsOf(int codePoint);
}
