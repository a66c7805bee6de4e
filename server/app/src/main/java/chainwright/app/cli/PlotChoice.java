package chainwright.app.cli;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.model.Definition;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds the chain and the stage that the command line names. */
final class PlotChoice {

  private PlotChoice() {}

  /**
   * Finds a chain or bus.
   *
   * @param definitions those of the file
   * @param name its name; null for the only one
   * @return the chain or bus
   * @throws IOException if there is none of that name, or none is named among several
   */
  static Definition.Track track(List<Definition> definitions, @Nullable String name)
      throws IOException {
    List<Definition.Track> tracks = new ArrayList<>();
    for (Definition definition : definitions) {
      if (definition instanceof Definition.Track track) {
        tracks.add(track);
      }
    }
    String names =
        tracks.stream()
            .map(track -> "`" + track.name().text() + "`")
            .distinct()
            .collect(Collectors.joining(", "));
    if (tracks.isEmpty()) {
      throw new IOException("the file holds no chain and no bus");
    }
    if (name == null && tracks.size() > 1) {
      throw new IOException("name one of the chains by `--chain`: " + names);
    }
    return tracks.stream()
        .filter(track -> name == null || track.name().text().equals(name))
        .findFirst()
        .orElseThrow(
            () -> new IOException("there is no chain `" + name + "`; the file holds " + names));
  }

  /**
   * Finds a stage.
   *
   * @param path the chain
   * @param labelOrNumber its label, or its number from 1 in the order of the signal; null for none
   * @return the stage, or empty if none is named
   * @throws IOException if there is no such stage
   */
  static Optional<StageElement> stage(SignalPath path, @Nullable String labelOrNumber)
      throws IOException {
    if (labelOrNumber == null) {
      return Optional.empty();
    }
    List<StageElement> stages = path.stages();
    for (int i = 0; i < stages.size(); i++) {
      boolean isLabelled =
          stages
              .get(i)
              .stage()
              .clauses()
              .label()
              .filter(label -> label.text().equals(labelOrNumber))
              .isPresent();
      if (isLabelled || labelOrNumber.equals(Integer.toString(i + 1))) {
        return Optional.of(stages.get(i));
      }
    }
    StringBuilder known = new StringBuilder();
    for (int i = 0; i < stages.size(); i++) {
      known.append(i == 0 ? "" : ", ").append(i + 1).append(' ').append(stages.get(i).word());
    }
    throw new IOException(
        "there is no stage `"
            + labelOrNumber
            + "` in `"
            + path.track().name().text()
            + "`; "
            + (stages.isEmpty() ? "it has no stages" : "its stages are " + known));
  }
}
