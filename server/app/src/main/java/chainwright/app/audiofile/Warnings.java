package chainwright.app.audiofile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was wrong with a file, in the order in which it was found. */
final class Warnings {

  /** A broken file may have a fault in each of its thousands of frames. */
  private static final int MOST = 20;

  private final List<String> sentences = new ArrayList<>();
  private long others;

  void add(String sentence) {
    if (sentences.size() < MOST) {
      sentences.add(sentence);
    } else {
      others++;
    }
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
