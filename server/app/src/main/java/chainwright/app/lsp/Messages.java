package chainwright.app.lsp;

import chainwright.app.lsp.wire.Json;
import chainwright.app.lsp.wire.Peer;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/**
 * Hands each message to the method that answers it. A list in plain code: to find the methods by
 * reflection would cost half of a start.
 */
final class Messages implements Peer {

  private final ChainServer server;
  private final TextRequests text;
  private final WorkspaceRequests workspace;
  private final Json json;

  Messages(ChainServer server, Json json) {
    this.server = server;
    this.text = server.text();
    this.workspace = server.workspace();
    this.json = json;
  }

  @Override
  public CompletableFuture<?> request(String method, JsonElement params) {
    return switch (method) {
      case "initialize" ->
          params instanceof JsonObject object
              ? server.initialize(object)
              : CompletableFuture.failedFuture(
                  Session.error(ResponseErrorCode.InvalidParams, "`params` must be an object"));
      case "shutdown" -> server.shutdown();
      case "textDocument/codeAction" -> ask(params, CodeActionParams.class, text::codeAction);
      case "textDocument/completion" -> ask(params, CompletionParams.class, text::completion);
      case "textDocument/definition" -> ask(params, DefinitionParams.class, text::definition);
      case "textDocument/diagnostic" ->
          ask(params, DocumentDiagnosticParams.class, text::diagnostic);
      case "textDocument/documentHighlight" ->
          ask(params, DocumentHighlightParams.class, text::documentHighlight);
      case "textDocument/documentLink" -> ask(params, DocumentLinkParams.class, text::documentLink);
      case "textDocument/documentSymbol" ->
          ask(params, DocumentSymbolParams.class, text::documentSymbol);
      case "textDocument/foldingRange" ->
          ask(params, FoldingRangeRequestParams.class, text::foldingRange);
      case "textDocument/formatting" ->
          ask(params, DocumentFormattingParams.class, text::formatting);
      case "textDocument/hover" -> ask(params, HoverParams.class, text::hover);
      case "textDocument/inlayHint" -> ask(params, InlayHintParams.class, text::inlayHint);
      case "textDocument/onTypeFormatting" ->
          ask(params, DocumentOnTypeFormattingParams.class, text::onTypeFormatting);
      case "textDocument/prepareRename" ->
          ask(params, PrepareRenameParams.class, text::prepareRename);
      case "textDocument/rangeFormatting" ->
          ask(params, DocumentRangeFormattingParams.class, text::rangeFormatting);
      case "textDocument/references" -> ask(params, ReferenceParams.class, text::references);
      case "textDocument/rename" -> ask(params, RenameParams.class, text::rename);
      case "textDocument/selectionRange" ->
          ask(params, SelectionRangeParams.class, text::selectionRange);
      case "textDocument/semanticTokens/full" ->
          ask(params, SemanticTokensParams.class, text::semanticTokensFull);
      case "textDocument/semanticTokens/full/delta" ->
          ask(params, SemanticTokensDeltaParams.class, text::semanticTokensFullDelta);
      case "textDocument/semanticTokens/range" ->
          ask(params, SemanticTokensRangeParams.class, text::semanticTokensRange);
      case "textDocument/signatureHelp" ->
          ask(params, SignatureHelpParams.class, text::signatureHelp);
      case "workspace/executeCommand" ->
          ask(params, ExecuteCommandParams.class, workspace::executeCommand);
      case "workspace/symbol" -> ask(params, WorkspaceSymbolParams.class, workspace::symbol);
      default ->
          CompletableFuture.failedFuture(
              Session.error(
                  ResponseErrorCode.MethodNotFound, "the method `" + method + "` is not offered"));
    };
  }

  @Override
  public void notify(String method, JsonElement params) {
    switch (method) {
      case "initialized" -> server.initialized();
      case "exit" -> server.exit();
      case "textDocument/didOpen" -> text.didOpen(opened(params));
      case "textDocument/didChange" ->
          text.didChange(json.read(params, DidChangeTextDocumentParams.class));
      case "textDocument/didClose" ->
          text.didClose(json.read(params, DidCloseTextDocumentParams.class));
      case "workspace/didChangeConfiguration" ->
          workspace.didChangeConfiguration(json.read(params, DidChangeConfigurationParams.class));
      case "workspace/didChangeWatchedFiles" ->
          workspace.didChangeWatchedFiles(json.read(params, DidChangeWatchedFilesParams.class));
      case "workspace/didChangeWorkspaceFolders" ->
          workspace.didChangeWorkspaceFolders(
              json.read(params, DidChangeWorkspaceFoldersParams.class));
      default -> {
        // Saving changes nothing, since the text is known from the edits; the rest is for others.
      }
    }
  }

  private <P> CompletableFuture<?> ask(
      JsonElement params, Class<P> type, Function<P, CompletableFuture<?>> handler) {
    P read = json.read(params, type);
    return read == null
        ? CompletableFuture.failedFuture(
            Session.error(
                ResponseErrorCode.InvalidParams, "`params` must be an object; found none"))
        : handler.apply(read);
  }

  /** Read by hand: every start has this message. */
  private static DidOpenTextDocumentParams opened(JsonElement params) {
    if (params instanceof JsonObject object
        && object.get("textDocument") instanceof JsonObject document
        && document.has("uri")
        && document.has("version")
        && document.has("text")) {
      return new DidOpenTextDocumentParams(
          new TextDocumentItem(
              document.get("uri").getAsString(),
              "chain",
              document.get("version").getAsInt(),
              document.get("text").getAsString()));
    }
    throw new JsonParseException("a document has a `uri`, a `version` and a `text`");
  }
}
