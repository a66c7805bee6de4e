package chainwright.app.cli;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.FrequencyPlot;
import chainwright.app.plot.HarmonicsPlot;
import chainwright.app.plot.LevelPlot;
import chainwright.app.plot.Plot;
import chainwright.app.plot.Samples;
import chainwright.app.plot.SvgPlot;
import chainwright.app.plot.TextPlot;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What a plot is written as. */
enum PlotFormat {
  /** A drawing in characters. */
  TEXT {
    @Override
    String write(PlotSubject subject, PlotAxis axis, NumberTable table) {
      return TextPlot.render(drawing(subject, axis, table));
    }
  },
  /** A picture. */
  SVG {
    @Override
    String write(PlotSubject subject, PlotAxis axis, NumberTable table) {
      return SvgPlot.render(drawing(subject, axis, table));
    }
  },
  /** Numbers in columns. */
  CSV {
    @Override
    String write(PlotSubject subject, PlotAxis axis, NumberTable table) {
      return table.toCsv();
    }
  },
  /** Numbers with what they belong to; null where there is none, such as the level of silence. */
  JSON {
    @Override
    String write(PlotSubject subject, PlotAxis axis, NumberTable table) {
      JsonObject object = new JsonObject();
      object.addProperty("chain", subject.path().track().name().text());
      subject.stage().ifPresent(stage -> object.addProperty("stage", stage.word()));
      object.addProperty("axis", axis.name().toLowerCase(Locale.ROOT));
      object.addProperty("sampleRateHz", subject.path().rate().hertz());
      JsonArray columns = new JsonArray();
      table.columns().forEach(columns::add);
      object.add("columns", columns);
      JsonArray rows = new JsonArray();
      for (List<Double> row : table.rows()) {
        JsonArray numbers = new JsonArray();
        for (Double number : row) {
          numbers.add(Double.isFinite(number) ? new JsonPrimitive(number) : JsonNull.INSTANCE);
        }
        rows.add(numbers);
      }
      object.add("rows", rows);
      return new GsonBuilder().serializeNulls().create().toJson(object) + "\n";
    }
  };

  /**
   * Asks whether it is a drawing, which needs the usual grid.
   *
   * @return whether it draws curves rather than to write numbers
   */
  boolean isDrawing() {
    return this == TEXT || this == SVG;
  }

  /**
   * Writes a plot.
   *
   * @param subject what it shows
   * @param axis what it runs over
   * @param table its numbers
   * @return the text, ending in a line break
   */
  abstract String write(PlotSubject subject, PlotAxis axis, NumberTable table);

  private static Plot drawing(PlotSubject subject, PlotAxis axis, NumberTable table) {
    double[] values = table.column(1);
    if (axis == PlotAxis.HARMONICS) {
      return HarmonicsPlot.of(
          subject.title(),
          PlotSubject.SINE_HZ,
          Samples.of(Arrays.stream(values).map(level -> level - values[0]).toArray()));
    }
    Curve curve =
        new Curve(
            subject.title(), CurveRole.STAGE, Samples.of(table.column(0)), Samples.of(values));
    return axis == PlotAxis.FREQUENCY
        ? FrequencyPlot.of(subject.title(), List.of(curve))
        : LevelPlot.of(subject.title(), List.of(curve));
  }
}
