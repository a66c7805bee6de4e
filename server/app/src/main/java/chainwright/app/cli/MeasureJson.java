package chainwright.app.cli;

import chainwright.app.report.Cautions;
import chainwright.app.report.MeasuredRecording;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;

/**
 * Readings for programs, with all digits; null where there is none, such as the level of silence.
 */
final class MeasureJson {

  private static final int VERSION = 1;

  private MeasureJson() {}

  static String of(List<MeasuredRecording> measured) {
    JsonObject object = new JsonObject();
    object.addProperty("version", VERSION);
    JsonArray recordings = new JsonArray();
    measured.forEach(recording -> recordings.add(of(recording)));
    object.add("recordings", recordings);
    return new GsonBuilder()
            .serializeNulls()
            .disableHtmlEscaping()
            .setPrettyPrinting()
            .create()
            .toJson(object)
        + "\n";
  }

  private static JsonObject of(MeasuredRecording recording) {
    JsonObject object = new JsonObject();
    object.addProperty("file", recording.file().toString());
    object.addProperty("kind", recording.format().file().label());
    object.addProperty("samples", recording.format().samples().toString());
    add(object, MeasureNumber.whole(recording));
    object.addProperty("saysItsChannels", recording.saysItsPositions());
    JsonArray channels = new JsonArray();
    for (int c = 0; c < recording.positions().size(); c++) {
      JsonObject channel = new JsonObject();
      channel.addProperty("name", recording.channelName(c));
      channel.addProperty("loudnessWeight", recording.positions().get(c).weight());
      add(channel, MeasureNumber.channel(recording, c));
      channels.add(channel);
    }
    object.add("channels", channels);
    object.add("cautions", texts(Cautions.of(recording)));
    object.add("warnings", texts(recording.warnings()));
    return object;
  }

  private static void add(JsonObject object, List<MeasureNumber> numbers) {
    for (MeasureNumber number : numbers) {
      if (!Double.isFinite(number.value())) {
        object.add(number.name(), JsonNull.INSTANCE);
      } else if (number.isWhole()) {
        object.add(number.name(), new JsonPrimitive((long) number.value()));
      } else {
        object.add(number.name(), new JsonPrimitive(number.value()));
      }
    }
  }

  private static JsonArray texts(List<String> texts) {
    JsonArray array = new JsonArray();
    texts.forEach(array::add);
    return array;
  }
}
