package chainwright.app.audiofile.vorbis;

/**
 * Reads a setup header as far as numbers stand in it by which the library would reserve memory or
 * repeat a loop, and refuses what no encoder writes.
 *
 * <p>Source: Xiph.Org Foundation, "Vorbis I specification", sections 3.2.1 and 4.2.4; from memory.
 */
final class SetupCheck {

  /** Code words of all books together; encoders write some ten thousand. */
  private static final int MOST_CODE_WORDS = 1 << 18;

  /** Values of all books together; encoders write a few hundred thousand. */
  private static final long MOST_VALUES = 1 << 22;

  private static final int MOST_PARTITIONS = 1 << 16;
  private static final int BOOK_SYNC = 0x564342;

  private final LowBits in;
  private int codeWords;
  private long values;
  private int[] dimensions = {};
  private int[] entries = {};

  private SetupCheck(LowBits in) {
    this.in = in;
  }

  /** Throws unless the library can take this header. */
  static void require(byte[] packet) throws VorbisException {
    SetupCheck check = new SetupCheck(new LowBits(packet, 7));
    check.checkBooks();
    check.checkTimes();
    check.checkFloors();
    check.checkResidues();
  }

  private int read(int width) throws VorbisException {
    return (int) in.read(width);
  }

  private void checkBooks() throws VorbisException {
    int count = read(8) + 1;
    dimensions = new int[count];
    entries = new int[count];
    for (int book = 0; book < count; book++) {
      if (read(24) != BOOK_SYNC) {
        throw new VorbisException("a code book does not begin with its mark");
      }
      dimensions[book] = read(16);
      entries[book] = read(24);
      if (dimensions[book] == 0 || entries[book] == 0) {
        throw new VorbisException("a code book is empty");
      }
      checkLengths(entries[book]);
      checkValues(entries[book], dimensions[book]);
    }
  }

  private void checkLengths(int count) throws VorbisException {
    boolean isOrdered = read(1) == 1;
    if (isOrdered) {
      int length = read(5) + 1;
      for (int done = 0; done < count; length++) {
        int run = read(32 - Integer.numberOfLeadingZeros(count - done));
        if (run > count - done || length > 32) {
          throw new VorbisException("a code book has more lengths than entries");
        }
        done += run;
      }
      use(count);
      return;
    }
    boolean isSparse = read(1) == 1;
    for (int i = 0; i < count; i++) {
      if (!isSparse || read(1) == 1) {
        in.skip(5);
        use(1);
      }
    }
  }

  private void use(int more) throws VorbisException {
    codeWords += more;
    if (codeWords > MOST_CODE_WORDS) {
      throw new VorbisException("the code books are larger than any encoder writes");
    }
  }

  private void checkValues(int count, int dimension) throws VorbisException {
    int lookup = read(4);
    if (lookup == 0) {
      return;
    }
    if (lookup != 1) {
      throw new VorbisException("a code book is of a type that cannot be read");
    }
    values += (long) count * dimension;
    if (values > MOST_VALUES) {
      throw new VorbisException("the code books are larger than any encoder writes");
    }
    in.skip(64);
    int width = read(4) + 1;
    in.skip(1 + (long) root(count, dimension) * width);
  }

  /** The largest number whose power is not above the count. */
  private static int root(int count, int power) {
    int root = 1;
    while (isPowerWithin(root + 1, power, count)) {
      root++;
    }
    return root;
  }

  private static boolean isPowerWithin(int base, int power, int limit) {
    if (base == 1) {
      return true;
    }
    long value = 1;
    for (int i = 0; i < power; i++) {
      value *= base;
      if (value > limit) {
        return false;
      }
    }
    return true;
  }

  private void checkTimes() throws VorbisException {
    in.skip(16L * (read(6) + 1));
  }

  private void checkFloors() throws VorbisException {
    for (int left = read(6) + 1; left > 0; left--) {
      int type = read(16);
      if (type == 0) {
        in.skip(8 + 16 + 16 + 6 + 8);
        in.skip(8L * (read(4) + 1));
      } else if (type == 1) {
        skipFloor();
      } else {
        throw new VorbisException("a floor is of a type that is not known");
      }
    }
  }

  private void skipFloor() throws VorbisException {
    int[] classes = new int[read(5)];
    int most = -1;
    for (int i = 0; i < classes.length; i++) {
      classes[i] = read(4);
      most = Math.max(most, classes[i]);
    }
    int[] sizes = new int[most + 1];
    for (int i = 0; i <= most; i++) {
      sizes[i] = read(3) + 1;
      int subclasses = read(2);
      in.skip(subclasses > 0 ? 8 : 0);
      in.skip(8L << subclasses);
    }
    in.skip(2);
    int width = read(4);
    for (int of : classes) {
      in.skip((long) sizes[of] * width);
    }
  }

  private void checkResidues() throws VorbisException {
    for (int left = read(6) + 1; left > 0; left--) {
      int type = read(16);
      int begin = read(24);
      int end = read(24);
      int size = read(24) + 1;
      int classes = read(6) + 1;
      int book = read(8);
      boolean isSound =
          type <= 2
              && begin <= end
              && (end - begin) / size <= MOST_PARTITIONS
              && book < entries.length
              && isPowerWithin(classes, dimensions[book], entries[book]);
      if (!isSound) {
        throw new VorbisException("a residue does not fit its code book");
      }
      int[] stages = new int[classes];
      for (int i = 0; i < classes; i++) {
        stages[i] = read(3);
        stages[i] |= read(1) == 1 ? read(5) << 3 : 0;
      }
      for (int bits : stages) {
        in.skip(8L * Integer.bitCount(bits));
      }
    }
  }
}
