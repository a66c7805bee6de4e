package chainwright.app.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.PositionEncodingKind;

/** What the server offers to an editor. Each handler has its line here. */
final class Capabilities {

  private Capabilities() {}

  static JsonObject of(ClientTraits client) {
    JsonObject offered = new JsonObject();
    offered.addProperty(
        "positionEncoding",
        switch (client.encoding()) {
          case UTF_8 -> PositionEncodingKind.UTF8;
          case UTF_16 -> PositionEncodingKind.UTF16;
          case UTF_32 -> PositionEncodingKind.UTF32;
        });
    offered.add("textDocumentSync", sync());
    offered.add("workspace", workspace());
    if (client.pullsDiagnostics()) {
      JsonObject pull = new JsonObject();
      pull.addProperty("interFileDependencies", true);
      pull.addProperty("workspaceDiagnostics", false);
      offered.add("diagnosticProvider", pull);
    }
    if (client.takesActions()) {
      offered.add(
          "codeActionProvider",
          lists(
              "codeActionKinds",
              List.of(
                  CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, FixActions.FIX_ALL)));
    }
    offered.addProperty("hoverProvider", true);
    offered.addProperty("definitionProvider", true);
    offered.addProperty("referencesProvider", true);
    offered.addProperty("documentHighlightProvider", true);
    if (client.preparesRenames()) {
      JsonObject rename = new JsonObject();
      rename.addProperty("prepareProvider", true);
      offered.add("renameProvider", rename);
    } else {
      offered.addProperty("renameProvider", true);
    }
    JsonObject links = new JsonObject();
    links.addProperty("resolveProvider", false);
    offered.add("documentLinkProvider", links);
    offered.addProperty("workspaceSymbolProvider", true);
    offered.addProperty("inlayHintProvider", true);
    JsonObject signatures = lists("triggerCharacters", List.of(" "));
    signatures.add("retriggerCharacters", list(List.of(" ")));
    offered.add("signatureHelpProvider", signatures);
    JsonObject completion = lists("triggerCharacters", Completions.TRIGGERS);
    completion.addProperty("resolveProvider", false);
    offered.add("completionProvider", completion);
    offered.addProperty("documentFormattingProvider", true);
    offered.addProperty("documentRangeFormattingProvider", true);
    JsonObject typing = lists("moreTriggerCharacter", List.of("\n"));
    typing.addProperty("firstTriggerCharacter", "}");
    offered.add("documentOnTypeFormattingProvider", typing);
    if (client.coloursTokens()) {
      offered.add("semanticTokensProvider", tokens());
    }
    offered.add("executeCommandProvider", lists("commands", List.of(LivePlots.COMMAND)));
    offered.addProperty("documentSymbolProvider", true);
    offered.addProperty("foldingRangeProvider", true);
    offered.addProperty("selectionRangeProvider", true);
    return offered;
  }

  private static JsonObject sync() {
    JsonObject sync = new JsonObject();
    sync.addProperty("openClose", true);
    // Incremental: only what has changed is sent.
    sync.addProperty("change", 2);
    return sync;
  }

  private static JsonObject workspace() {
    JsonObject folders = new JsonObject();
    folders.addProperty("supported", true);
    folders.addProperty("changeNotifications", true);
    JsonObject workspace = new JsonObject();
    workspace.add("workspaceFolders", folders);
    return workspace;
  }

  private static JsonObject tokens() {
    JsonObject legend = lists("tokenTypes", Tokens.TYPES);
    legend.add("tokenModifiers", list(Tokens.MODIFIERS));
    JsonObject full = new JsonObject();
    full.addProperty("delta", true);
    JsonObject tokens = new JsonObject();
    tokens.add("legend", legend);
    tokens.add("full", full);
    tokens.addProperty("range", true);
    return tokens;
  }

  private static JsonObject lists(String name, List<String> words) {
    JsonObject object = new JsonObject();
    object.add(name, list(words));
    return object;
  }

  private static JsonArray list(List<String> words) {
    JsonArray list = new JsonArray();
    words.forEach(list::add);
    return list;
  }
}
