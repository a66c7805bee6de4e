package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Step;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An analogue insert in a path.
 *
 * @param insert the insert as written
 * @param split its place in the path
 * @param isPartial whether another path runs beside it
 * @param declaredDbfs the highest peak as the last {@code gain} before it expects [dBFS]
 * @param peakDbfs the highest peak right before it [dBFS]: the declared one, a ceiling or full
 *     scale of the recording, and what the stages since then make of it
 */
record AnalogueInsert(
    Step.Insert insert,
    SplitElement split,
    boolean isPartial,
    Optional<Double> declaredDbfs,
    double peakDbfs) {

  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;

  private static final String WORD = "insert";

  /** Returns the inserts of a path that are not bypassed, in order. */
  static List<AnalogueInsert> in(Evidence evidence) {
    List<AnalogueInsert> found = new ArrayList<>();
    if (holdsInsert(evidence.path().elements())) {
      addAll(evidence.path().elements(), false, Before.START, found);
    }
    return found;
  }

  /** Most chains hold none, and then the peaks before it need not be followed. */
  private static boolean holdsInsert(List<PathElement> elements) {
    for (PathElement element : elements) {
      if (element instanceof SplitElement split) {
        if (split.step() instanceof Step.Insert) {
          return true;
        }
        for (PathBranch branch : split.branches()) {
          if (holdsInsert(branch.elements())) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static void addAll(
      List<PathElement> elements, boolean isPartial, Before before, List<AnalogueInsert> into) {
    Before at = before;
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof SplitElement split) {
        if (split.step() instanceof Step.Insert insert) {
          into.add(new AnalogueInsert(insert, split, isPartial, at.declaredDbfs(), at.peakDbfs()));
        } else {
          for (PathBranch branch : split.branches()) {
            addAll(branch.elements(), true, at, into);
          }
        }
      }
      at = at.after(element);
    }
  }

  /**
   * How high peaks can be at a place.
   *
   * @param declaredDbfs as the last {@code gain} with an expected peak says [dBFS]
   * @param startDbfs where the stages since begin [dBFS]: the declared peak, a ceiling or full
   *     scale
   * @param since the stages since then
   */
  private record Before(Optional<Double> declaredDbfs, double startDbfs, List<PathElement> since) {

    static final Before START = new Before(Optional.empty(), 0, List.of());

    Before after(PathElement element) {
      if (element instanceof StageElement stage) {
        Optional<Double> expected = stage.stage().settings().number("expected-peak");
        if (stage.word().equals("gain") && expected.isPresent()) {
          return new Before(expected, expected.get(), List.of());
        }
        Optional<Double> ceiling = stage.stage().settings().number("ceiling");
        if (ceiling.isPresent() && ceiling.get() < peakDbfs()) {
          return new Before(declaredDbfs, ceiling.get(), List.of());
        }
      }
      List<PathElement> longer = new ArrayList<>(since);
      longer.add(element);
      return new Before(declaredDbfs, startDbfs, longer);
    }

    /** The start, raised by the most that the stages since then raise any frequency. */
    double peakDbfs() {
      return since.isEmpty()
          ? startDbfs
          : startDbfs
              + ResponseSearch.findHighest(SignalPath.product(since), LOWEST_HZ, HIGHEST_HZ)
                  .decibels();
    }
  }

  /** Whether settings are as written or as without them: nothing unread may be meant for one. */
  boolean isRead(String... settings) {
    for (String name : settings) {
      boolean isInDoubt =
          insert.settings().kind().setting(name).filter(insert.settings()::mayBeUnread).isPresent();
      if (isInDoubt) {
        return false;
      }
    }
    // What nothing tells the meaning of may be meant for any setting.
    return insert.settings().unread().stream().noneMatch(one -> one.settings().isEmpty());
  }

  double sendDbu() {
    return insert.settings().number("send").orElse(0.0);
  }

  double returnDbu() {
    return insert.settings().number("return").orElse(0.0);
  }

  /** Returns the highest level that leaves for the device [dBu]. */
  double sendPeakDbu(Level alignment) {
    return peakDbfs - alignment.decibels() + sendDbu();
  }

  /** Names the peak in a sentence. */
  String peakInWords() {
    return declaredDbfs
        .map(peak -> "a peak of " + Level.ofDbfs(peak))
        .orElse("a peak at full scale of the recording, the worst case,");
  }

  /** Returns what the stages that stand for the device do to each frequency. */
  Response model() {
    return SignalPath.product(
        split.branches().stream().flatMap(branch -> branch.elements().stream()).toList());
  }

  /** Returns where a finding about a part of the line should stand. */
  Place at(TextSpan span) {
    return split.appliedAt().orElse(new Place(section(), span));
  }

  TextSpan wordSpan() {
    return TextSpan.ofLength(insert.lineSpan().start(), WORD.length());
  }

  /** Returns where a setting's value stands; the word if it is not written. */
  TextSpan valueSpan(String setting) {
    return insert.settings().written(setting).map(Written::valueSpan).orElse(wordSpan());
  }

  /** Writes a setting: a new value for it, or the setting itself after the device's title. */
  PlacedEdit set(String setting, String value) {
    Optional<Written> written = insert.settings().written(setting);
    if (written.isPresent()) {
      return Edits.replaceValue(section(), written.get(), value);
    }
    int end = wordSpan().end();
    for (Written one : insert.settings().written()) {
      end = Math.max(end, one.span().end());
    }
    int quote = section().text().indexOf('"', section().text().indexOf('"', end) + 1);
    boolean isBare = insert.settings().written().isEmpty() && !insert.title().isEmpty();
    int at = isBare ? quote + 1 : end;
    return new PlacedEdit(
        section(), new TextEdit(new TextSpan(at, at), " " + setting + " " + value));
  }

  private Section section() {
    return split.place().section();
  }
}
