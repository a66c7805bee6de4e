package chainwright.app.audiofile;

/** The checks of what callers hand to readers and writers. */
final class Blocks {

  private Blocks() {}

  /** Throws unless the frames lie within each of the planes. */
  static void requireRoom(double[][] block, int channels, int offset, int frames) {
    if (block.length < channels) {
      throw new IllegalArgumentException(
          "a block must have " + channels + " planes, but had " + block.length);
    }
    for (int channel = 0; channel < channels; channel++) {
      int size = block[channel].length;
      if (offset < 0 || frames < 0 || offset > size - frames) {
        throw new IllegalArgumentException(
            "the frames must lie within the plane of "
                + size
                + ", but were "
                + frames
                + " from "
                + offset);
      }
    }
  }

  /** Throws unless there is such a frame, or the end is meant. */
  static void requireFrame(long frame, long frames) {
    if (frame < 0 || frame > frames) {
      throw new IllegalArgumentException(
          "the frame must lie between 0 and " + frames + ", but was " + frame);
    }
  }
}
