package chainwright.dsp.reverb;

import java.util.ArrayList;
import java.util.List;

/**
 * The lengths of the ways through a room, which grows with its decay.
 *
 * <p>The mean of the lines grows with the decay, from 2 ms at 0.05 s over 36 ms at 1.4 s to 230 ms
 * at 30 s, so that no line loses so much at once that its filter is not exact, and all lines
 * together hold at least 0.12 s for each second of decay and their resonances lie too dense to be
 * heard one by one. Lengths are primes, each of which is used once, so that pulses seldom fall
 * together.
 *
 * <p>Source: 0.15 s for each second of decay, J.-M. Jot and A. Chaigne, AES preprint 3030, 1991,
 * after M. R. Schroeder; from memory. The growth is ours.
 */
final class RoomLengths {

  private static final double USUAL_DECAY_SECONDS = 1.4;
  private static final double USUAL_MEAN_SECONDS = 0.036;

  /** The powers of the decay, below and above the usual one. */
  private static final double GROWTH_OF_SMALL = 0.85;

  private static final double GROWTH_OF_LARGE = 0.6;

  /** The shortest and the longest line as multiples of the mean. */
  private static final double SHORTEST = 0.5;

  private static final double LONGEST = 1.7;

  /** The all-passes as multiples of the mean line. */
  private static final double[] DIFFUSIONS = {0.043, 0.071, 0.113, 0.177};

  private final double meanFrames;

  /**
   * Sizes a room.
   *
   * @param decaySeconds its decay at middle frequencies [s]
   * @param sampleRateHz the sample rate [Hz]
   */
  RoomLengths(double decaySeconds, double sampleRateHz) {
    double growth = decaySeconds < USUAL_DECAY_SECONDS ? GROWTH_OF_SMALL : GROWTH_OF_LARGE;
    meanFrames =
        sampleRateHz * USUAL_MEAN_SECONDS * Math.pow(decaySeconds / USUAL_DECAY_SECONDS, growth);
  }

  /** Returns about the mean length of the lines [frames]. */
  double meanFrames() {
    return meanFrames;
  }

  /** Returns the lengths of the network's lines [frames], none twice. */
  int[] lines() {
    Scatter scatter = new Scatter(1);
    List<Integer> taken = new ArrayList<>();
    int[] order = {0, 9, 5, 14, 3, 12, 7, 10, 1, 15, 4, 8, 13, 2, 11, 6};
    int[] lengths = new int[FeedbackNetwork.LINES];
    for (int k = 0; k < lengths.length; k++) {
      double share = (order[k] + scatter.next()) / lengths.length;
      lengths[k] = prime(meanFrames * SHORTEST * Math.pow(LONGEST / SHORTEST, share), taken);
    }
    return lengths;
  }

  /** Returns the lengths of the all-passes of a channel [frames]. */
  int[] diffusions(int channel) {
    Scatter scatter = new Scatter(50 + channel);
    List<Integer> taken = new ArrayList<>();
    int[] lengths = new int[DIFFUSIONS.length];
    for (int stage = 0; stage < lengths.length; stage++) {
      double share = DIFFUSIONS[stage] * (0.85 + 0.3 * scatter.next());
      lengths[stage] = prime(share * meanFrames, taken);
    }
    return lengths;
  }

  /** The first prime from here on that is not taken, which takes it. */
  private static int prime(double from, List<Integer> taken) {
    int number = Math.max(2, (int) from);
    while (!isPrime(number) || taken.contains(number)) {
      number++;
    }
    taken.add(number);
    return number;
  }

  private static boolean isPrime(int number) {
    for (int factor = 2; factor * factor <= number; factor++) {
      if (number % factor == 0) {
        return false;
      }
    }
    return true;
  }
}
