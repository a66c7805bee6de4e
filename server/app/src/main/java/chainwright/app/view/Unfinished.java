package chainwright.app.view;

import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Unread;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Says what has to be done to a line before anything can be computed of it. */
public final class Unfinished {

  private Unfinished() {}

  /**
   * Says why a stage cannot be computed.
   *
   * @param stage a stage without a design
   * @return such as "cannot be computed before `18 dB` is mended"
   */
  public static String inWords(StageElement stage) {
    Settings settings = stage.stage().settings();
    return inWords(
        unread(settings.unread(), stage.place().section().text()),
        settings.missing().stream().map(Setting::name).toList());
  }

  /**
   * Says why a structure cannot be computed.
   *
   * @param split a structure of which something could not be read
   * @return such as "cannot be computed before `-12` is mended"
   */
  public static String inWords(SplitElement split) {
    return inWords(unread(split.unread(), split.place().section().text()), List.of());
  }

  /**
   * Says what is left out of a response, and why.
   *
   * @param elements what the response is made of
   * @return such as "Left out: compressor, which cannot be computed before `ratio 2` is mended.";
   *     empty if nothing is
   */
  public static Optional<String> leftOut(List<PathElement> elements) {
    List<String> reasons = new ArrayList<>();
    collect(elements, reasons);
    return reasons.isEmpty()
        ? Optional.empty()
        : Optional.of("Left out: " + String.join("; ", reasons) + ".");
  }

  private static void collect(List<PathElement> elements, List<String> into) {
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof StageElement stage && stage.sound().isEmpty()) {
        into.add(stage.word() + ", which " + inWords(stage));
      } else if (element instanceof SplitElement split) {
        if (!split.unread().isEmpty()) {
          into.add(StepWord.of(split.step()) + ", which " + inWords(split));
        }
        split.branches().forEach(branch -> collect(branch.elements(), into));
      }
    }
  }

  private static String inWords(List<String> unread, List<String> missing) {
    if (unread.isEmpty() && missing.isEmpty()) {
      return "cannot be computed as it is written";
    }
    List<String> first = new ArrayList<>();
    if (!unread.isEmpty()) {
      first.add(isOrAre(unread, "mended"));
    }
    if (!missing.isEmpty()) {
      first.add("its " + isOrAre(missing, "written"));
    }
    return "cannot be computed before " + String.join(" and ", first);
  }

  private static String isOrAre(List<String> things, String done) {
    return String.join(" and ", things) + (things.size() == 1 ? " is " : " are ") + done;
  }

  /** What could not be read, as it is written; what stands side by side is taken together. */
  private static List<String> unread(List<Unread> unread, String text) {
    List<TextSpan> spans = new ArrayList<>();
    unread.stream()
        .map(Unread::span)
        .sorted(Comparator.comparingInt(TextSpan::start))
        .forEach(
            span -> {
              TextSpan last = spans.isEmpty() ? span : spans.get(spans.size() - 1);
              boolean isBeside =
                  span.start() <= last.end() || text.substring(last.end(), span.start()).isBlank();
              if (!spans.isEmpty() && isBeside) {
                spans.set(spans.size() - 1, last.union(span));
              } else {
                spans.add(span);
              }
            });
    return spans.stream()
        .map(span -> "`" + text.substring(span.start(), span.end()) + "`")
        .toList();
  }
}
