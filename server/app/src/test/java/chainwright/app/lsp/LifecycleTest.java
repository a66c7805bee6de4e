package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** From the first message to the last. Codes are those of JSON-RPC 2.0 and of the protocol 3.17. */
class LifecycleTest {

  private static final String URI = "file:///r/a.chain";
  private static final String OUTLINE = "{\"textDocument\":{\"uri\":\"" + URI + "\"}}";
  private static final String SYMBOLS = "textDocument/documentSymbol";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{}                                                                   | utf-16",
        "{\"general\":{\"positionEncodings\":[\"utf-8\",\"utf-16\"]}}         | utf-16",
        "{\"general\":{\"positionEncodings\":[\"utf-8\"]}}                    | utf-8",
        "{\"general\":{\"positionEncodings\":[\"utf-32\"]}}                   | utf-32",
      })
  void initialize_offeredEncodings_agreesOnOne(String capabilities, String agreed) {
    assertThat(offered(capabilities).get("positionEncoding").getAsString()).isEqualTo(agreed);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{}                                       | false",
        "{\"textDocument\":{\"diagnostic\":{}}}   | true",
      })
  void initialize_editorPulls_offersPull(String capabilities, boolean isOffered) {
    assertThat(offered(capabilities).has("diagnosticProvider")).isEqualTo(isOffered);
  }

  private static JsonObject offered(String capabilities) {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      return editor
          .ask("initialize", "{\"capabilities\":" + capabilities + "}")
          .getAsJsonObject()
          .getAsJsonObject("capabilities");
    }
  }

  @Test
  void request_beforeInitialize_isRefused() {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      assertThat(editor.askRefused(SYMBOLS, OUTLINE)).isEqualTo(-32002);
    }
  }

  @Test
  void initialize_twice_isRefused() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      assertThat(editor.askRefused("initialize", "{\"capabilities\":{}}")).isEqualTo(-32600);
    }
  }

  @Test
  void initialized_editorWatchesAndConfigures_registersAndAsks() {
    String capabilities =
        """
        {"workspace":{"configuration":true,
          "didChangeWatchedFiles":{"dynamicRegistration":true},
          "didChangeConfiguration":{"dynamicRegistration":true}}}""";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      assertThat(editor.expectAndAnswer("client/registerCapability", "null").toString())
          .contains("**/*.chain", "workspace/didChangeConfiguration");
      assertThat(editor.expectAndAnswer("workspace/configuration", "[null]").toString())
          .contains("chainwright");
    }
  }

  @Test
  void exit_afterShutdown_isZero() {
    ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}");
    editor.close();
    assertThat(editor.awaitExitCode()).isZero();
  }

  @Test
  void exit_withoutShutdown_isOne() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.tell("exit", "null");
      assertThat(editor.awaitExitCode()).isEqualTo(1);
    }
  }

  @Test
  void streamEnd_withoutExit_endsTheServer() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.hangUp();
      assertThat(editor.awaitExitCode()).isEqualTo(1);
    }
  }

  @Test
  void shutdown_withoutExit_refusesRequestsAndWaits() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.ask("shutdown", "null");
      assertThat(editor.askRefused(SYMBOLS, OUTLINE)).isEqualTo(-32600);
      editor.tell("exit", "null");
      assertThat(editor.awaitExitCode()).isZero();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "textDocument/noSuchThing          | {}                  | -32601",
        "textDocument/moniker              | " + OUTLINE + "     | -32601",
        "textDocument/documentSymbol       | " + OUTLINE + "     | -32602",
        "textDocument/documentSymbol       | {\"textDocument\":7}| -32602",
        "textDocument/documentSymbol       | {}                  | -32602",
      })
  void request_unknownOrWrong_isRefusedAndTheSessionLives(String method, String params, int code) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      assertThat(editor.askRefused(method, params)).isEqualTo(code);
      editor.open(URI, "chain a { }\n");
      assertThat(editor.ask(SYMBOLS, OUTLINE).getAsJsonArray()).hasSize(1);
    }
  }

  @Test
  void message_brokenJson_isReportedAndTheSessionLives() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.write("{\"jsonrpc\":\"2.0\",\"id\":70,\"method\":\"textDocument/hover\",\"params\":{");
      assertThat(editor.next().getAsJsonObject("error").get("code").getAsInt()).isEqualTo(-32700);
      editor.open(URI, "chain a { }\n");
      assertThat(editor.ask(SYMBOLS, OUTLINE).getAsJsonArray()).hasSize(1);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Content-Length: many\r\n\r\n",
        "Content-Length: -1\r\n\r\n",
        "X-Unknown: 1\r\n\r\n",
        "Content-Length: 2\r\n\r\n[]",
        "Content-Length: 4\r\n\r\nnull",
        "\r\n\r\n",
      })
  void stream_brokenMessage_doesNotEndTheSession(String bytes) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.writeBytes(bytes);
      editor.openQuietly(URI, "chain a { }\n");
      editor.awaitMethod("textDocument/publishDiagnostics");
    }
  }

  /** Longer than the server takes from the stream at once, with bytes that form one character. */
  @Test
  void message_long_isReadWhole() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "# Größe\n".repeat(30_000) + "chain a { }\n");
      assertThat(editor.ask(SYMBOLS, OUTLINE).getAsJsonArray().get(0).toString())
          .contains("\"line\":30000");
    }
  }

  @Test
  void answer_toNoRequest_isIgnored() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.write("{\"jsonrpc\":\"2.0\",\"id\":\"99\",\"result\":null}");
      editor.open(URI, "chain a { }\n");
    }
  }

  @Test
  void initialized_editorRefusesToRegister_theSessionLives() {
    String capabilities =
        "{\"workspace\":{\"didChangeWatchedFiles\":{\"dynamicRegistration\":true}}}";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      JsonObject asked = editor.next();
      editor.write(
          "{\"jsonrpc\":\"2.0\",\"id\":"
              + asked.get("id")
              + ",\"error\":{\"code\":-32601,\"message\":\"no\"}}");
      editor.open(URI, "chain a { }\n");
    }
  }

  @Test
  void notification_unknownOrForNoDocument_isIgnored() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.tell("$/setTrace", "{\"value\":\"off\"}");
      editor.tell("$/noSuchThing", "{}");
      editor.tell("noSuchThing", "{}");
      editor.tell("textDocument/didOpen", "{\"textDocument\":7}");
      editor.change("file:///r/closed.chain", 2, "[{\"text\":\"x\"}]");
      editor.tell(
          "textDocument/didClose", "{\"textDocument\":{\"uri\":\"file:///r/closed.chain\"}}");
      editor.tell(
          "textDocument/didSave", "{\"textDocument\":{\"uri\":\"file:///r/closed.chain\"}}");
    }
  }

  @Test
  void cancel_requestOnItsWay_isAnsweredOnce() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a { }\n");
      int id = editor.send(SYMBOLS, OUTLINE);
      editor.tell("$/cancelRequest", "{\"id\":" + id + "}");
      JsonObject answer = editor.answerTo(id);
      assertThat(
              answer.has("result")
                  || answer.getAsJsonObject("error").get("code").getAsInt() == -32800)
          .as("%s", answer)
          .isTrue();
    }
  }
}
