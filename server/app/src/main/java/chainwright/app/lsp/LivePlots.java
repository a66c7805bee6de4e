package chainwright.app.lsp;

import chainwright.app.assist.Hovering;
import chainwright.app.assist.Plotting;
import chainwright.app.plot.AltText;
import chainwright.app.plot.PlotTheme;
import chainwright.app.plot.SvgPlot;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.project.SourceFile;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.jspecify.annotations.Nullable;

/**
 * The command {@code chainwright.plot}: the plots of the line at a place and of its chain, for a
 * view that follows the caret.
 *
 * <p>Its one argument has {@code textDocument} and {@code position}, as requests about a place have
 * them, and may have a {@code theme}, one of the words of the setting {@code plotTheme}, which
 * holds without it. The answer is null where nothing can be drawn, else
 *
 * <pre>{@code
 * {"name": "lead",                        the chain, bus or preset
 *  "parts": [                             the line, if it can be drawn, then the whole
 *    {"says": "high-pass: −3.0 dB …",     in words
 *     "plots": [{"says": "…",             for those who cannot see the picture
 *                "svg": "<svg …"}]}]}
 * }</pre>
 */
final class LivePlots {

  static final String COMMAND = "chainwright.plot";

  private LivePlots() {}

  /**
   * What is asked.
   *
   * @param textDocument the document
   * @param position the place in it
   * @param theme the inks and papers; empty for those of the settings
   */
  record Asked(
      TextDocumentIdentifier textDocument,
      Position position,
      Optional<ClientSettings.Theme> theme) {}

  /** Reads the arguments of the command; empty if they are not as they should be. */
  static Optional<Asked> parse(@Nullable List<Object> arguments) {
    if (arguments == null
        || arguments.size() != 1
        || !(arguments.get(0) instanceof JsonObject asked)
        || !(asked.get("position") instanceof JsonObject position)
        || !(asked.get("textDocument") instanceof JsonObject document)) {
      return Optional.empty();
    }
    Optional<String> uri = text(document.get("uri"));
    Optional<Integer> line = number(position.get("line"));
    Optional<Integer> character = number(position.get("character"));
    Optional<String> word = text(asked.get("theme"));
    Optional<ClientSettings.Theme> theme = word.flatMap(ClientSettings.Theme::of);
    if (uri.isEmpty()
        || line.isEmpty()
        || character.isEmpty()
        || (asked.has("theme") && theme.isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(
        new Asked(
            new TextDocumentIdentifier(uri.get()),
            new Position(line.get(), character.get()),
            theme));
  }

  private static Optional<String> text(@Nullable JsonElement json) {
    return json != null && json.isJsonPrimitive() && json.getAsJsonPrimitive().isString()
        ? Optional.of(json.getAsString())
        : Optional.empty();
  }

  /** A line or a character: a whole number from 0. */
  private static Optional<Integer> number(@Nullable JsonElement json) {
    return json != null
            && json.isJsonPrimitive()
            && json.getAsJsonPrimitive().isNumber()
            && json.getAsString().matches("\\d{1,9}")
        ? Optional.of(json.getAsInt())
        : Optional.empty();
  }

  static Optional<JsonObject> answer(Asked asked, Request request) {
    int offset = request.offsetOf(asked.position());
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    PlotTheme theme = asked.theme().orElse(request.settings().plotTheme()).paints();
    Hovering hovering =
        new Hovering(
            request.workspace().projectOf(request.document()).scope(file.key()),
            Catalogue.load(),
            Optional.empty());
    return file.sections()
        .get(index)
        .definition()
        .flatMap(
            definition ->
                new Plotting(hovering).at(definition, offset - file.tree().startOf(index)))
        .map(plotted -> json(plotted, theme));
  }

  private static JsonObject json(Plotting.Plotted plotted, PlotTheme theme) {
    JsonObject answer = new JsonObject();
    answer.addProperty("name", plotted.name());
    JsonArray parts = new JsonArray();
    for (Plotting.Part part : plotted.parts()) {
      JsonArray plots = new JsonArray();
      part.plots()
          .forEach(
              plot -> {
                JsonObject drawn = new JsonObject();
                drawn.addProperty("says", AltText.of(plot));
                drawn.addProperty("svg", SvgPlot.render(plot, theme));
                plots.add(drawn);
              });
      JsonObject told = new JsonObject();
      told.addProperty("says", part.says());
      told.add("plots", plots);
      parts.add(told);
    }
    answer.add("parts", parts);
    return answer;
  }
}
