package chainwright.dsp.loudness;

/** Counts the runs of one channel at full scale. */
final class ClipCounter {

  private final double fullScale;
  private long frame;
  private long run;
  private double runSign;
  private long count;
  private long sampleCount;
  private long longest;
  private long first = -1;

  ClipCounter(double fullScale) {
    this.fullScale = fullScale;
  }

  /** Takes samples of which the largest magnitude is known: mostly, it leaves nothing to do. */
  void take(double[] samples, int from, int to, double largest) {
    if (largest < fullScale) {
      endRun();
      frame += to - from;
      return;
    }
    for (int i = from; i < to; i++) {
      double sample = samples[i];
      if (Math.abs(sample) < fullScale) {
        endRun();
      } else {
        if (run > 0 && Math.signum(sample) != runSign) {
          endRun();
        }
        runSign = Math.signum(sample);
        run++;
      }
      frame++;
    }
  }

  private void endRun() {
    if (run >= ClippedRuns.SHORTEST) {
      first = count == 0 ? frame - run : first;
      count++;
      sampleCount += run;
      longest = Math.max(longest, run);
    }
    run = 0;
  }

  /** Returns the runs so far, an open one included. */
  ClippedRuns runs() {
    boolean isOpen = run >= ClippedRuns.SHORTEST;
    return new ClippedRuns(
        count + (isOpen ? 1 : 0),
        sampleCount + (isOpen ? run : 0),
        isOpen ? Math.max(longest, run) : longest,
        isOpen && count == 0 ? frame - run : first);
  }

  void reset() {
    frame = 0;
    run = 0;
    count = 0;
    sampleCount = 0;
    longest = 0;
    first = -1;
  }
}
