package chainwright.app.audiofile;

import chainwright.app.audiofile.bytes.Damage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was wrong with a file, in the order in which it was found. */
final class Warnings {

  /** A broken file may have a fault in each of its thousands of frames. */
  private static final int MOST = 20;

  /** What follows how long a file should be and is, where it is shorter. */
  static final String REST_MISSING = ": the rest is missing, perhaps a copy that broke off";

  private final List<String> sentences = new ArrayList<>();
  private long others;
  private long toldToFrame;
  private boolean isLoss;

  void add(String sentence) {
    if (sentences.contains(sentence)) {
      return;
    }
    if (sentences.size() < MOST) {
      sentences.add(sentence);
    } else {
      others++;
    }
  }

  /** Says what the file promises and does not hold. */
  void addLoss(String sentence) {
    isLoss = true;
    add(sentence);
  }

  /** Asks whether something is missing or silent that should sound. */
  boolean isLoss() {
    return isLoss;
  }

  /** Says which part of a file is silent, and why, once, however often it is read. */
  void addDamage(Damage damage, double sampleRateHz) {
    isLoss = true;
    if (damage.frames() == 0) {
      add(damage.reason());
      return;
    }
    if (damage.frame() < toldToFrame) {
      return;
    }
    toldToFrame = damage.frame() + damage.frames();
    add(
        "damaged at "
            + seconds(damage.frame(), sampleRateHz)
            + ": "
            + damage.reason()
            + "; "
            + seconds(damage.frames(), sampleRateHz)
            + " are silent");
  }

  List<String> list() {
    List<String> all = new ArrayList<>(sentences);
    if (others > 0) {
      all.add("and " + others + " more of this kind");
    }
    return List.copyOf(all);
  }

  /** A length or place in time, such as {@code 3.200 s}. */
  static String seconds(long frames, double sampleRateHz) {
    return String.format(Locale.ROOT, "%.3f s", (double) frames / sampleRateHz);
  }
}
