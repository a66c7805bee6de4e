package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.app.view.StagePlots;
import chainwright.notation.lowering.Nearest;
import chainwright.notation.model.Definition;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds the chain and the line of it that the command line names. */
final class PlotChoice {

  /** Why a file has nothing to show. */
  static final String NO_TRACK = "the file holds no chain and no bus";

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
    List<Definition.Track> tracks = tracks(definitions);
    String names =
        tracks.stream()
            .map(track -> "`" + track.name().text() + "`")
            .distinct()
            .collect(Collectors.joining(", "));
    if (tracks.isEmpty()) {
      throw new IOException(NO_TRACK);
    }
    if (name == null && tracks.size() > 1) {
      throw new IOException("name one of the chains by `--chain`: " + names);
    }
    return tracks.stream()
        .filter(track -> name == null || track.name().text().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IOException(
                    "there is no chain `"
                        + name
                        + "`"
                        + guess(name, tracks.stream().map(track -> track.name().text()).toList())
                        + "; the file holds "
                        + names));
  }

  /**
   * Returns the chains and buses of a file.
   *
   * @param definitions what the file defines
   * @return those that are chains or buses, in the order of the text
   */
  static List<Definition.Track> tracks(List<Definition> definitions) {
    List<Definition.Track> tracks = new ArrayList<>();
    for (Definition definition : definitions) {
      if (definition instanceof Definition.Track track) {
        tracks.add(track);
      }
    }
    return tracks;
  }

  /**
   * Finds a line of a chain.
   *
   * @param outline the chain
   * @param labelOrNumber its label or number
   * @return the line
   * @throws IOException if there is no such line; the message lists those that there are
   */
  static Part part(Outline outline, String labelOrNumber) throws IOException {
    String chain = outline.path().track().name().text();
    if (outline.parts().isEmpty()) {
      throw new IOException("`" + chain + "` has no stages");
    }
    return outline
        .find(labelOrNumber)
        .orElseThrow(
            () ->
                new IOException(
                    "there is no stage `"
                        + labelOrNumber
                        + "` in `"
                        + chain
                        + "`"
                        + guess(
                            labelOrNumber,
                            outline.all().stream().flatMap(part -> part.label().stream()).toList())
                        + "; its stages are\n"
                        + outline.all().stream()
                            .map(PlotChoice::line)
                            .collect(Collectors.joining("\n"))));
  }

  private static String line(Part part) {
    return "  ".repeat(part.depth() + 1)
        + part.number()
        + " "
        + part.stage().map(StagePlots::title).orElse(part.words())
        + part.label().map(label -> " as " + label).orElse("")
        + (part.isBypassed() ? " (bypassed)" : "");
  }

  private static String guess(@Nullable String word, List<String> known) {
    List<String> near = word == null ? List.of() : Nearest.to(word, known);
    return near.isEmpty() ? "" : ", but `" + near.get(0) + "`";
  }
}
