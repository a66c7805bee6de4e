package chainwright.dsp.loudness;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** The reference cases and their signals; the resources' ORIGIN.md says where they are from. */
final class LoudnessCases {

  private LoudnessCases() {}

  static JsonObject read(String name) {
    return JsonParser.parseReader(
            new InputStreamReader(
                Objects.requireNonNull(LoudnessCases.class.getResourceAsStream(name)),
                StandardCharsets.UTF_8))
        .getAsJsonObject();
  }

  static List<JsonObject> all() {
    return read("cases.json").getAsJsonArray("cases").asList().stream()
        .map(JsonElement::getAsJsonObject)
        .toList();
  }

  static List<JsonObject> having(String group) {
    return all().stream().filter(one -> one.has(group)).toList();
  }

  static JsonObject named(String id) {
    return all().stream()
        .filter(one -> one.get("id").getAsString().equals(id))
        .findFirst()
        .orElseThrow();
  }

  static double rateHz(JsonObject one) {
    return one.get("fs").getAsDouble();
  }

  static List<ChannelPosition> layout(JsonObject one) {
    return one.getAsJsonArray("layout").asList().stream()
        .map(
            cell ->
                switch (cell.getAsString()) {
                  case "L" -> ChannelPosition.LEFT;
                  case "R" -> ChannelPosition.RIGHT;
                  case "C" -> ChannelPosition.CENTRE;
                  case "Ls" -> ChannelPosition.LEFT_SURROUND;
                  case "Rs" -> ChannelPosition.RIGHT_SURROUND;
                  default -> throw new IllegalArgumentException(cell.toString());
                })
        .toList();
  }

  /** Makes the signal by the case's formula. */
  static double[][] signal(JsonObject one) {
    return switch (one.get("kind").getAsString()) {
      case "tones" ->
          channels(one, TestSignal.sine(rateHz(one), one.get("f").getAsDouble(), envelope(one)));
      case "multitone" -> channels(one, multitone(one));
      case "lcg" -> noises(one);
      case "tp_tone" ->
          TestSignal.twice(
              TestSignal.fadedTone(
                  rateHz(one),
                  one.get("div").getAsDouble(),
                  one.get("amp").getAsDouble(),
                  one.get("phase_deg").getAsDouble(),
                  one.get("seconds").getAsDouble()));
      default -> throw new IllegalArgumentException(one.toString());
    };
  }

  private static double[] envelope(JsonObject one) {
    return TestSignal.envelope(
        rateHz(one),
        one.getAsJsonArray("segments").asList().stream()
            .map(JsonElement::getAsJsonArray)
            .map(
                pair ->
                    TestSignal.segment(
                        pair.get(0).getAsDouble(),
                        pair.get(1).isJsonNull()
                            ? Double.NEGATIVE_INFINITY
                            : pair.get(1).getAsDouble()))
            .toArray(TestSignal.Segment[]::new));
  }

  private static double[][] channels(JsonObject one, double[] samples) {
    List<double[]> channels = new ArrayList<>();
    for (JsonElement gain : one.getAsJsonArray("channel_db")) {
      channels.add(
          TestSignal.scaled(
              samples, gain.isJsonNull() ? 0 : TestSignal.factor(gain.getAsDouble())));
    }
    return channels.toArray(double[][]::new);
  }

  private static double[][] noises(JsonObject one) {
    double[] envelope = envelope(one);
    return one.getAsJsonArray("seeds").asList().stream()
        .map(seed -> TestSignal.noise(seed.getAsLong(), envelope))
        .toArray(double[][]::new);
  }

  private static double[] multitone(JsonObject one) {
    double rateHz = rateHz(one);
    JsonArray hertz = one.getAsJsonArray("freqs");
    double amplitude = TestSignal.factor(one.get("peak_dbfs_each").getAsDouble());
    double[] samples = new double[(int) Math.round(one.get("seconds").getAsDouble() * rateHz)];
    for (int k = 0; k < hertz.size(); k++) {
      double turns = 0.618034 * k;
      double phase = 2 * Math.PI * (turns - Math.floor(turns));
      for (int n = 0; n < samples.length; n++) {
        samples[n] +=
            amplitude * Math.sin(2 * Math.PI * hertz.get(k).getAsDouble() * n / rateHz + phase);
      }
    }
    return samples;
  }
}
