package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.model.Step;
import chainwright.notation.model.Value;
import java.util.ArrayList;
import java.util.List;

/** Finds what acts in a passage only: {@code during} blocks, and stages with a span of time. */
final class Acting {

  private Acting() {}

  /** Returns a table row for each that acts between two times [s]. */
  static List<List<String>> between(SignalPath path, double fromSeconds, double toSeconds) {
    List<List<String>> rows = new ArrayList<>();
    collect(path, path.elements(), fromSeconds, toSeconds, rows);
    return rows;
  }

  private static void collect(
      SignalPath path,
      List<PathElement> elements,
      double from,
      double to,
      List<List<String>> rows) {
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof SplitElement split) {
        if (split.step() instanceof Step.During during
            && meets(during.from().seconds(), during.to().seconds(), from, to)) {
          rows.add(
              List.of(
                  "during",
                  when(during.from().seconds(), during.to().seconds()),
                  ResponseWords.of(split.branches().get(0).response(), path.rate())));
        }
        split.branches().forEach(branch -> collect(path, branch.elements(), from, to, rows));
      } else if (element instanceof StageElement stage) {
        stage.stage().settings().written().stream()
            .filter(written -> written.value() instanceof Value.Span)
            .map(written -> (Value.Span) written.value())
            .filter(span -> span.low().dimension() == chainwright.quantity.Dimension.TIME)
            .filter(span -> meets(span.low().baseValue(), span.high().baseValue(), from, to))
            .forEach(
                span ->
                    rows.add(
                        List.of(
                            stage.word(),
                            when(span.low().baseValue(), span.high().baseValue()),
                            stage
                                .context()
                                .settings()
                                .number("gain")
                                .map(Readings::gain)
                                .orElse(""))));
      }
    }
  }

  private static boolean meets(double low, double high, double from, double to) {
    return low <= to && high >= from;
  }

  private static String when(double from, double to) {
    return Readings.clock(from) + " to " + Readings.clock(to);
  }
}
