package chainwright.app.lsp;

import chainwright.app.assist.Hint;
import chainwright.app.plot.PlotTheme;
import chainwright.notation.diagnostic.Severity;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What the user has set in the editor, in its {@code chainwright} section.
 *
 * @param plots how curves are drawn in a hover
 * @param plotTheme the ground on which pictures are drawn
 * @param severities how grave a finding is shown, by its code, where the user wants it otherwise
 * @param hints which remarks are shown between the words
 */
record ClientSettings(
    Plots plots, Theme plotTheme, Map<String, Severity> severities, Set<Hint.Kind> hints) {

  /** How curves are drawn in a hover. */
  enum Plots {
    /** A picture where the editor is known to show one, else text. */
    AUTO,
    /** A picture. */
    SVG,
    /** Characters. */
    TEXT
  }

  /** The ground on which pictures are drawn. */
  enum Theme {
    /** Dark lines on light ground. */
    LIGHT,
    /** Light lines on dark ground. */
    DARK,
    /** Black lines on white ground. */
    CONTRAST_LIGHT,
    /** White lines on black ground. */
    CONTRAST_DARK;

    /** Returns the inks and papers. */
    PlotTheme paints() {
      return switch (this) {
        case LIGHT -> PlotTheme.LIGHT;
        case DARK -> PlotTheme.DARK;
        case CONTRAST_LIGHT -> PlotTheme.CONTRAST_LIGHT;
        case CONTRAST_DARK -> PlotTheme.CONTRAST_DARK;
      };
    }

    /** Finds the theme that is meant by a word such as "contrast-dark". */
    static Optional<Theme> of(String word) {
      return Arrays.stream(values()).filter(theme -> word(theme).equals(word)).findFirst();
    }
  }

  /**
   * Settings with what was wrong in them.
   *
   * @param settings the settings; a value that is wrong keeps what it was
   * @param troubles sentences for the user
   */
  record Reading(ClientSettings settings, List<String> troubles) {}

  static final ClientSettings DEFAULTS =
      new ClientSettings(Plots.AUTO, Theme.LIGHT, Map.of(), Set.of(Hint.Kind.values()));

  ClientSettings {
    severities = Map.copyOf(severities);
    hints = Set.copyOf(hints);
  }

  /**
   * Reads settings as an editor sends them, either bare or inside an object {@code chainwright}.
   * What is not mentioned is as the start options said; what is wrong keeps its value in these
   * settings.
   */
  Reading read(JsonElement json, ClientSettings start) {
    List<String> troubles = new ArrayList<>();
    if (json.isJsonNull()) {
      return new Reading(start, troubles);
    }
    if (!json.isJsonObject()) {
      troubles.add("the settings `chainwright` must be an object, but were `" + json + "`");
      return new Reading(this, troubles);
    }
    JsonObject object = json.getAsJsonObject();
    if (object.has("chainwright")) {
      return read(object.get("chainwright"), start);
    }
    return new Reading(
        new ClientSettings(
            choice(object, "plots", Plots.class, start.plots, plots, troubles),
            choice(object, "plotTheme", Theme.class, start.plotTheme, plotTheme, troubles),
            readSeverities(object, start, troubles),
            readHints(object, start, troubles)),
        troubles);
  }

  private Map<String, Severity> readSeverities(
      JsonObject object, ClientSettings start, List<String> troubles) {
    JsonElement json = object.get("severities");
    if (json == null || json.isJsonNull()) {
      return start.severities;
    }
    if (!json.isJsonObject()) {
      troubles.add("the setting `severities` must be an object, but was `" + json + "`");
      return severities;
    }
    Map<String, Severity> read = new TreeMap<>();
    for (String code : json.getAsJsonObject().keySet()) {
      Severity known = severities.get(code);
      Severity severity =
          choice(
              json.getAsJsonObject(),
              code,
              Severity.class,
              known == null ? Severity.WARNING : known,
              known == null ? Severity.WARNING : known,
              troubles);
      read.put(code, severity);
    }
    return read;
  }

  private Set<Hint.Kind> readHints(JsonObject object, ClientSettings start, List<String> troubles) {
    JsonElement json = object.get("hints");
    if (json == null || json.isJsonNull()) {
      return start.hints;
    }
    if (json.isJsonPrimitive() && json.getAsString().equals("all")) {
      return Set.of(Hint.Kind.values());
    }
    if (json.isJsonPrimitive() && json.getAsString().equals("none")) {
      return Set.of();
    }
    Set<Hint.Kind> read = EnumSet.noneOf(Hint.Kind.class);
    for (JsonElement one : json.isJsonArray() ? json.getAsJsonArray() : new JsonArray()) {
      for (Hint.Kind kind : Hint.Kind.values()) {
        if (one.isJsonPrimitive() && one.getAsString().equals(word(kind))) {
          read.add(kind);
        }
      }
    }
    if (!json.isJsonArray() || read.size() != json.getAsJsonArray().size()) {
      troubles.add(
          "the setting `hints` must be `all`, `none`, or a list of "
              + Arrays.stream(Hint.Kind.values())
                  .map(kind -> "`" + word(kind) + "`")
                  .collect(Collectors.joining(", "))
              + ", each once, but was `"
              + json
              + "`");
      return hints;
    }
    return read;
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static <E extends Enum<E>> E choice(
      JsonObject object, String name, Class<E> type, E byDefault, E before, List<String> troubles) {
    JsonElement json = object.get(name);
    if (json == null || json.isJsonNull()) {
      return byDefault;
    }
    List<String> words = new ArrayList<>();
    for (E constant : type.getEnumConstants()) {
      String word = word(constant);
      if (json.isJsonPrimitive() && json.getAsString().equals(word)) {
        return constant;
      }
      words.add("`" + word + "`");
    }
    troubles.add(
        "the setting `"
            + name
            + "` must be one of "
            + String.join(", ", words)
            + ", but was `"
            + json
            + "`");
    return before;
  }
}
