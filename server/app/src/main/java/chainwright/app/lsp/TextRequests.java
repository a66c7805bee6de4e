package chainwright.app.lsp;

import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.TextChange;
import chainwright.app.workspace.TextPosition;
import com.google.gson.JsonParseException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensDelta;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.services.TextDocumentService;

/** Messages about one document: its text is kept here, each request goes to its handler. */
final class TextRequests implements TextDocumentService {

  private final Session session;
  private final FindingsPublisher publisher;
  private final Tokens tokens = new Tokens();

  TextRequests(Session session, FindingsPublisher publisher) {
    this.session = session;
    this.publisher = publisher;
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    if (session.isRunning()) {
      TextDocumentItem item = params.getTextDocument();
      publisher.changed(
          session.documents().open(item.getUri(), item.getVersion(), item.getText()).path());
    }
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    VersionedTextDocumentIdentifier document = params.getTextDocument();
    Integer version = document.getVersion();
    List<TextChange> changes =
        params.getContentChanges().stream().map(TextRequests::change).toList();
    session
        .documents()
        .change(
            document.getUri(), version == null ? 0 : version, changes, session.traits().encoding())
        .ifPresent(after -> publisher.changed(after.path()));
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    session.documents().close(uri).ifPresent(publisher::closed);
    tokens.forget(DocumentPath.ofUri(uri));
    publisher.changedOnDisk(List.of(DocumentPath.ofUri(uri)));
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // The text is known from the edits already.
  }

  @Override
  public CompletableFuture<DocumentDiagnosticReport> diagnostic(DocumentDiagnosticParams params) {
    return session.answer(params.getTextDocument(), params, PulledDiagnostics::answer);
  }

  @Override
  public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
    return session.answer(params.getTextDocument(), params, FixActions::answer);
  }

  @Override
  public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(
      DocumentSymbolParams params) {
    return session.answer(params.getTextDocument(), params, Outline::answer);
  }

  @Override
  public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(
      CompletionParams params) {
    return session
        .answer(params.getTextDocument(), params, Completions::answer)
        .thenApply(Either::forRight);
  }

  @Override
  public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>>
      definition(DefinitionParams params) {
    return session
        .answer(params.getTextDocument(), params, Naming::define)
        .thenApply(Either::forLeft);
  }

  @Override
  public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
    return session
        .answer(params.getTextDocument(), params, Naming::refer)
        .thenApply(found -> found);
  }

  @Override
  public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(
      DocumentHighlightParams params) {
    return session
        .answer(params.getTextDocument(), params, Highlights::answer)
        .thenApply(found -> found);
  }

  @Override
  public CompletableFuture<List<DocumentLink>> documentLink(DocumentLinkParams params) {
    return session.answer(params.getTextDocument(), params, Links::answer);
  }

  @Override
  public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>>
      prepareRename(PrepareRenameParams params) {
    return session
        .answer(params.getTextDocument(), params, Naming::prepare)
        .thenApply(
            found ->
                found
                    .<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>>map(
                        Either3::forSecond)
                    .orElse(null));
  }

  @Override
  public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
    return session
        .answer(params.getTextDocument(), params, Naming::rename)
        .thenApply(found -> found.orElse(null));
  }

  @Override
  public CompletableFuture<Hover> hover(HoverParams params) {
    return session
        .answer(params.getTextDocument(), params, Hovers::answer)
        .thenApply(found -> found.orElse(null));
  }

  @Override
  public CompletableFuture<SignatureHelp> signatureHelp(SignatureHelpParams params) {
    return session
        .answer(params.getTextDocument(), params, Signatures::answer)
        .thenApply(found -> found.orElse(null));
  }

  @Override
  public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
    return session.answer(params.getTextDocument(), params, InlayHints::answer);
  }

  @Override
  public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
    return session.answer(params.getTextDocument(), params, Folding::answer);
  }

  @Override
  public CompletableFuture<List<SelectionRange>> selectionRange(SelectionRangeParams params) {
    return session.answer(params.getTextDocument(), params, Selection::answer);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
    return session.answer(params.getTextDocument(), params, Layout::answer);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> rangeFormatting(
      DocumentRangeFormattingParams params) {
    return session.answer(params.getTextDocument(), params, Layout::answerRange);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> onTypeFormatting(
      DocumentOnTypeFormattingParams params) {
    return session.answer(params.getTextDocument(), params, Layout::answerTyped);
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
    return session.answer(params.getTextDocument(), params, tokens::answer);
  }

  @Override
  public CompletableFuture<Either<SemanticTokens, SemanticTokensDelta>> semanticTokensFullDelta(
      SemanticTokensDeltaParams params) {
    return session.answer(params.getTextDocument(), params, tokens::answerDelta);
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensRange(SemanticTokensRangeParams params) {
    return session.answer(params.getTextDocument(), params, Tokens::answerRange);
  }

  private static TextChange change(TextDocumentContentChangeEvent event) {
    if (event.getText() == null) {
      throw new JsonParseException("a change has a `text`");
    }
    return event.getRange() == null
        ? TextChange.ofWhole(event.getText())
        : TextChange.of(
            place(event.getRange().getStart()), place(event.getRange().getEnd()), event.getText());
  }

  private static TextPosition place(Position position) {
    return new TextPosition(position.getLine(), position.getCharacter());
  }
}
