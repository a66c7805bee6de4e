package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LivePlotsTest {

  private static final String URI = "file:///r/a.chain";
  private static final String TEXT =
      """
      # "Night ferry"
      chain lead "Lead <vocal>" {
        source lead-vocal
        high-pass 66 Hz 18 dB/oct
      }
      """;

  /** The ground is the first rectangle; the colours are those of the themes. */
  @ParameterizedTest
  @CsvSource({
    "light, #ffffff",
    "dark, #25272b",
    "contrast-light, #ffffff",
    "contrast-dark, #000000",
    "'', #25272b"
  })
  void plot_ofAStage_comesWithItsChainOnTheGroundAskedFor(String theme, String ground) {
    String word = theme.isEmpty() ? "" : ",\"theme\":\"" + theme + "\"";
    JsonObject answer = ask(place(3, 6) + word).getAsJsonObject();
    assertThat(answer.get("name").getAsString()).isEqualTo("lead");
    JsonArray parts = answer.getAsJsonArray("parts");
    assertThat(parts).hasSize(2);
    JsonObject stage = parts.get(0).getAsJsonObject();
    assertThat(stage.get("says").getAsString()).startsWith("high-pass: −3.0 dB at 66 Hz");
    JsonObject plot = stage.getAsJsonArray("plots").get(0).getAsJsonObject();
    assertThat(plot.get("says").getAsString()).contains("−3.0 dB at 66 Hz");
    String svg = plot.get("svg").getAsString();
    assertThat(svg.substring(svg.indexOf("<rect"))).contains(ground);
    assertThat(svg.substring(svg.indexOf("<rect")).indexOf(ground)).isLessThan(80);
    assertThat(parts.get(1).getAsJsonObject().get("says").getAsString())
        .startsWith("lead Lead <vocal>: 1 stage");
  }

  @Test
  void plot_outsideOfChains_isNull() {
    assertThat(ask(place(0, 2)).isJsonNull()).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "chainwright.plot | -",
        "chainwright.plot | []",
        "chainwright.plot | [3]",
        "chainwright.plot | [{}]",
        "chainwright.plot | [{\"textDocument\":{\"uri\":\"file:///r/a.chain\"}}]",
        "chainwright.plot | [{\"textDocument\":{\"uri\":3},\"position\":{\"line\":1,\"character\":0}}]",
        "chainwright.plot | [{\"textDocument\":{\"uri\":\"file:///r/a.chain\"},\"position\":{\"line\":-1,\"character\":0}}]",
        "chainwright.plot | [{\"textDocument\":{\"uri\":\"file:///r/a.chain\"},\"position\":{\"line\":1,\"character\":0},\"theme\":\"mauve\"}]",
        "chainwright.plot | [{\"textDocument\":{\"uri\":\"file:///r/none.chain\"},\"position\":{\"line\":1,\"character\":0}}]",
        "chainwright.sing | [{\"textDocument\":{\"uri\":\"file:///r/a.chain\"},\"position\":{\"line\":1,\"character\":0}}]",
      })
  void command_notAsItShouldBe_isRefused(String command, String arguments) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, TEXT);
      String given = arguments == null ? "" : ",\"arguments\":" + arguments;
      assertThat(
              editor.askRefused(
                  "workspace/executeCommand", "{\"command\":\"" + command + "\"" + given + "}"))
          .isEqualTo(ResponseErrorCode.InvalidParams.getValue());
    }
  }

  private static String place(int line, int character) {
    return "\"textDocument\":{\"uri\":\""
        + URI
        + "\"},\"position\":{\"line\":"
        + line
        + ",\"character\":"
        + character
        + "}";
  }

  private static JsonElement ask(String argument) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofInitialize(
            "{\"capabilities\":{},\"initializationOptions\":{\"plotTheme\":\"dark\"}}")) {
      editor.open(URI, TEXT);
      return editor.ask(
          "workspace/executeCommand",
          "{\"command\":\"chainwright.plot\",\"arguments\":[{" + argument + "}]}");
    }
  }
}
