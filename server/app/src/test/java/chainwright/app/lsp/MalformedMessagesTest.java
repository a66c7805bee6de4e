package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is of another kind than it should be. Each request gets one answer and the session goes on:
 * {@link ScriptedEditor} fails where none comes, and on a second one. Codes are those of JSON-RPC
 * 2.0, section 5.1.
 */
class MalformedMessagesTest {

  private static final String URI = "file:///r/a.chain";
  private static final String DOCUMENT = "\"textDocument\":{\"uri\":\"" + URI + "\"}";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{'capabilities':null}",
        "{'capabilities':7}",
        "{'capabilities':[]}",
        "{'capabilities':{'textDocument':false}}",
        "{'capabilities':{'textDocument':{'diagnostic':false}}}",
        "{'capabilities':{'textDocument':{'diagnostic':'yes'}}}",
        "{'capabilities':{'textDocument':{'publishDiagnostics':{'relatedInformation':{}}}}}",
        "{'capabilities':{'textDocument':{'publishDiagnostics':[1]}}}",
        "{'capabilities':{'textDocument':{'foldingRange':{'rangeLimit':'many'}}}}",
        "{'capabilities':{'textDocument':{'foldingRange':{'rangeLimit':1.5}}}}",
        "{'capabilities':{'textDocument':{'foldingRange':{'rangeLimit':1e99}}}}",
        "{'capabilities':{'textDocument':{'completion':{'completionItem':{"
            + "'insertTextModeSupport':{'valueSet':['one',1e99,null]},'documentationFormat':7}}}}}",
        "{'capabilities':{'general':{'positionEncodings':7,'markdown':[]}}}",
        "{'capabilities':{'general':{'positionEncodings':[null,{},7]}}}",
        "{'capabilities':{'workspace':{'configuration':'true','didChangeWatchedFiles':1}}}",
        "{'capabilities':{},'workspaceFolders':{}}",
        "{'capabilities':{},'workspaceFolders':[7,{'uri':7},{'uri':'::no uri::','name':{}}]}",
        "{'capabilities':{},'rootUri':7}",
        "{'capabilities':{},'rootUri':'file:///%zz'}",
        "{'capabilities':{},'rootUri':{}}",
        "{'capabilities':{},'processId':'none','clientInfo':7,'trace':[]}",
      })
  void initialize_membersOfAnotherKind_areAsIfNotSaid(String params) {
    try (ScriptedEditor editor = ScriptedEditor.ofInitialize(params.replace('\'', '"'))) {
      editor.open(URI, "chain a { }\n");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"7", "[]", "\"x\"", "null", "false"})
  void initialize_withoutAnObject_isRefusedAndMayComeAgain(String params) {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      assertThat(editor.askRefused("initialize", params)).isEqualTo(-32602);
      editor.ask("initialize", "{\"capabilities\":{}}");
      editor.open(URI, "chain a { }\n");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"7", "[]", "\"x\"", "{\"hints\":7,\"severities\":[]}"})
  void initialize_settingsOfAnotherKind_areToldAndTheSessionGoesOn(String options) {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      int id =
          editor.send(
              "initialize", "{\"capabilities\":{},\"initializationOptions\":" + options + "}");
      JsonObject message = editor.next();
      while (!message.has("id")) {
        assertThat(message.get("method").getAsString()).isEqualTo("window/showMessage");
        message = editor.next();
      }
      assertThat(message.get("id").getAsString()).isEqualTo(Integer.toString(id));
      assertThat(message.has("result")).as("%s", message).isTrue();
      editor.open(URI, "chain a { }\n");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "hover | 7                                         | params` must be an object; found a number",
        "hover | []                                        | params` must be an object; found a list",
        "hover | null                                      | params` must be an object",
        "hover | {}                                        | `textDocument` must name a document",
        "hover | {'textDocument':7}                        | params.textDocument` must be an object",
        "hover | {'textDocument':{'uri':{}}}               | params.textDocument.uri` must be a text",
        "hover | {DOC}                                     | `params.position` is missing",
        "hover | {DOC,'position':7}                        | params.position` must be an object",
        "hover | {DOC,'position':{'line':'one'}}           | params",
        "hover | {DOC,'position':{'line':[]}}              | params.position.line` must be a number",
        "completion | {DOC}                                | `params.position` is missing",
        "completion | {DOC,'position':false}               | params.position` must be an object",
        "definition | {DOC}                                | `params.position` is missing",
        "references | {DOC}                                | `params.position` is missing",
        "documentHighlight | {DOC}                         | `params.position` is missing",
        "signatureHelp | {DOC}                             | `params.position` is missing",
        "prepareRename | {DOC}                             | `params.position` is missing",
        "rename | {DOC,'newName':'b'}                      | `params.position` is missing",
        "rename | {DOC,'position':{'line':0,'character':6}}| `params.newName` is missing",
        "codeAction | {DOC}                                | is missing",
        "codeAction | {DOC,'range':{'start':{'line':0,'character':0}},'context':{'diagnostics':[]}}"
            + " | `params.range.end` is missing",
        "inlayHint | {DOC}                                 | `params.range` is missing",
        "rangeFormatting | {DOC}                           | `params.range` is missing",
        "onTypeFormatting | {DOC}                          | is missing",
        "selectionRange | {DOC}                            | `params.positions` is missing",
        "selectionRange | {DOC,'positions':7}              | params.positions` must be",
        "semanticTokens/range | {DOC}                      | `params.range` is missing",
      })
  void request_malformed_isRefusedWithWhatIsWrong(String method, String params, String said) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a { }\n");
      int id =
          editor.send("textDocument/" + method, params.replace('\'', '"').replace("DOC", DOCUMENT));
      JsonObject error = editor.answerTo(id).getAsJsonObject("error");
      assertThat(error.get("code").getAsInt()).as("%s", error).isEqualTo(-32602);
      assertThat(error.get("message").getAsString()).contains(said).doesNotContain("java.");
      assertThat(editor.ask("textDocument/documentSymbol", "{" + DOCUMENT + "}").getAsJsonArray())
          .hasSize(1);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "workspace/symbol         | {}",
        "workspace/symbol         | {'query':{}}",
        "workspace/executeCommand | {}",
        "workspace/executeCommand | {'command':'chainwright.plot'}",
        "workspace/executeCommand | {'command':'chainwright.plot','arguments':[7]}",
        "workspace/executeCommand | {'command':7,'arguments':{}}",
      })
  void request_malformedForTheWorkspace_isRefused(String method, String params) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      assertThat(editor.askRefused(method, params.replace('\'', '"'))).isEqualTo(-32602);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "textDocument/didOpen                | 7",
        "textDocument/didOpen                | {'textDocument':{}}",
        "textDocument/didOpen                | {'textDocument':{'uri':{},'version':1,'text':'x'}}",
        "textDocument/didOpen                | {'textDocument':{'uri':'u','version':'one','text':'x'}}",
        "textDocument/didOpen                | {'textDocument':{'uri':'file:///b','version':1,'text':null}}",
        "textDocument/didChange              | {}",
        "textDocument/didChange              | {DOC,'contentChanges':7}",
        "textDocument/didChange              | {DOC,'contentChanges':[{}]}",
        "textDocument/didChange              | {DOC,'contentChanges':[{'range':{},'text':'x'}]}",
        "textDocument/didClose               | {}",
        "textDocument/didClose               | []",
        "workspace/didChangeConfiguration    | 7",
        "workspace/didChangeWatchedFiles     | {}",
        "workspace/didChangeWatchedFiles     | {'changes':[{}]}",
        "workspace/didChangeWorkspaceFolders | {'event':7}",
        "$/cancelRequest                     | {'id':{}}",
      })
  void notification_malformed_isIgnoredAndTheSessionGoesOn(String method, String params) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a { }\n");
      editor.tell(method, params.replace('\'', '"').replace("DOC", DOCUMENT));
      assertThat(editor.ask("textDocument/documentSymbol", "{" + DOCUMENT + "}").getAsJsonArray())
          .hasSize(1);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'jsonrpc':'2.0','id':{},'method':'shutdown'}",
        "{'jsonrpc':'2.0','id':null,'method':'shutdown'}",
        "{'jsonrpc':'2.0','id':70,'method':{}}",
        "{'jsonrpc':'2.0','id':70}",
        "{}",
        "[{'jsonrpc':'2.0','id':70,'method':'shutdown'}]",
      })
  void message_thatIsNoProperRequest_isRefusedOnce(String message) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.write(message.replace('\'', '"'));
      assertThat(editor.next().getAsJsonObject("error").get("code").getAsInt()).isEqualTo(-32600);
      editor.open(URI, "chain a { }\n");
    }
  }

  /** Deeper than any stack would bear that reads it by recursion. */
  @Test
  void request_holdingItselfTooDeep_isRefused() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.write(
          "{\"jsonrpc\":\"2.0\",\"id\":70,\"method\":\"textDocument/hover\",\"params\":"
              + "[".repeat(200_000)
              + "]".repeat(200_000)
              + "}");
      assertThat(editor.next().has("error")).isTrue();
      editor.open(URI, "chain a { }\n");
    }
  }
}
