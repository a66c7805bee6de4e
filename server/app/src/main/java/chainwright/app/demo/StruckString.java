package chainwright.app.demo;

/**
 * A struck stiff string: partials a little wider than harmonic, the high ones shorter.
 *
 * <p>Source: H. Fletcher, "Normal vibration frequencies of a stiff piano string", JASA 36(1), 1964
 * (from memory): {@code f(n) = n f √(1 + B n²)}. B, decays and levels are ours.
 */
final class StruckString {

  private static final double STIFFNESS = 0.0004;
  private static final int PARTIALS = 16;
  private static final double LONGEST_SECONDS = 4;

  /** Where the hammer strikes, as a share of the string: partials with a node there are missing. */
  private static final double HAMMER = 1 / 7.5;

  private StruckString() {}

  /**
   * Adds a note, lower ones further left.
   *
   * @param left the samples that it is added to
   * @param right the same of the other side
   * @param rateHz the sample rate [Hz]
   * @param startSeconds when it is struck [s]
   * @param noteHz the note [Hz]
   * @param gain its level
   */
  static void add(
      double[] left,
      double[] right,
      double rateHz,
      double startSeconds,
      double noteHz,
      double gain) {
    double place = Math.max(0.15, Math.min(0.85, 0.5 + Math.log(noteHz / 262) / 4));
    int start = (int) Math.round(startSeconds * rateHz);
    for (int n = 1; n <= PARTIALS; n++) {
      double hertz = n * noteHz * Math.sqrt(1 + STIFFNESS * n * n);
      double level = gain * Math.abs(Math.sin(Math.PI * n * HAMMER)) / n;
      double decayFrames = 2.2 / (1 + 0.35 * n) * rateHz;
      // A decaying sine is a recurrence of second order, which costs two products a sample.
      double radius = Math.exp(-1 / decayFrames);
      double turn = 2 * Math.PI * hertz / rateHz;
      double feedback = 2 * radius * Math.cos(turn);
      double now = level * Math.sin(turn);
      double before = 0;
      for (int i = start;
          i < Math.min(left.length, start + (int) (LONGEST_SECONDS * rateHz));
          i++) {
        double attack = Math.min(1, (i - start) / (0.004 * rateHz));
        left[i] += (1 - place) * attack * now;
        right[i] += place * attack * now;
        double next = feedback * now - radius * radius * before;
        before = now;
        now = next;
      }
    }
  }
}
