package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import chainwright.quantity.NumberText;
import java.util.Optional;

/** Says how long a passage is in beats, and where it lies in its recording. */
final class Passages {

  private Passages() {}

  /** Says a length at the session's tempo; empty if no tempo is declared. */
  static Optional<String> beats(Scope scope, double seconds) {
    return scope
        .session()
        .flatMap(Definition.Session::tempoBpm)
        .map(
            tempo ->
                "That is "
                    + NumberText.format(seconds * tempo / 60, 2)
                    + " beats at "
                    + NumberText.format(tempo, 1)
                    + " bpm.");
  }

  /** Says which part of the declared passage of a recording it is; empty if none is declared. */
  static Optional<String> inTake(Declarations.Take take, double fromSeconds, double toSeconds) {
    if (take.from().isEmpty() || take.to().isEmpty()) {
      return Optional.empty();
    }
    double start = take.from().get().seconds();
    double end = take.to().get().seconds();
    if (toSeconds <= start || fromSeconds >= end) {
      return Optional.of(
          "It lies outside the passage of the take, "
              + Readings.clock(start)
              + " to "
              + Readings.clock(end)
              + ".");
    }
    double share = (Math.min(end, toSeconds) - Math.max(start, fromSeconds)) / (end - start);
    return Optional.of(
        "It begins "
            + Readings.time(Math.max(0, fromSeconds - start))
            + " into the take's passage"
            + (toSeconds > fromSeconds
                ? " and takes " + NumberText.format(100 * share, 1) + " % of it."
                : "."));
  }
}
