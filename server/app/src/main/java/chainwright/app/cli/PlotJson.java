package chainwright.app.cli;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;
import java.util.Locale;

/** Numbers with what they belong to; null where there is none, such as the level of silence. */
final class PlotJson {

  private static final int VERSION = 1;

  private PlotJson() {}

  /**
   * Writes a table.
   *
   * @param subject what it is of
   * @param axis what it runs over
   * @param tone the sine whose harmonics are meant
   * @param table its numbers
   * @return one object, ended by a line break
   */
  static String of(PlotSubject subject, PlotAxis axis, Tone tone, NumberTable table) {
    JsonObject object = new JsonObject();
    object.addProperty("version", VERSION);
    object.addProperty("chain", subject.path().track().name().text());
    subject
        .part()
        .ifPresent(
            part -> {
              object.addProperty("stage", part.words());
              object.addProperty("number", part.number());
              part.label().ifPresent(label -> object.addProperty("label", label));
              object.addProperty("bypassed", part.isBypassed());
            });
    object.addProperty("axis", axis.name().toLowerCase(Locale.ROOT));
    object.addProperty("sampleRateHz", subject.path().rate().hertz());
    if (axis == PlotAxis.HARMONICS) {
      object.addProperty("toneHz", tone.hertz());
      object.addProperty("toneDbfs", tone.levelDbfs());
    }
    JsonArray columns = new JsonArray();
    JsonObject definitions = new JsonObject();
    for (NumberTable.Column column : table.columns()) {
      columns.add(column.name());
      JsonObject definition = new JsonObject();
      definition.addProperty("unit", column.unit());
      definition.addProperty("is", column.is());
      definitions.add(column.name(), definition);
    }
    object.add("columns", columns);
    object.add("definitions", definitions);
    object.add("rows", rows(table));
    return new GsonBuilder().serializeNulls().disableHtmlEscaping().create().toJson(object) + "\n";
  }

  private static JsonArray rows(NumberTable table) {
    JsonArray rows = new JsonArray();
    for (List<Double> row : table.rows()) {
      JsonArray numbers = new JsonArray();
      for (Double number : row) {
        numbers.add(Double.isFinite(number) ? new JsonPrimitive(number) : JsonNull.INSTANCE);
      }
      rows.add(numbers);
    }
    return rows;
  }
}
