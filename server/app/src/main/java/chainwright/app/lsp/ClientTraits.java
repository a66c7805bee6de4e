package chainwright.app.lsp;

import chainwright.app.workspace.PositionEncoding;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionCapabilities;
import org.eclipse.lsp4j.DidChangeConfigurationCapabilities;
import org.eclipse.lsp4j.DidChangeWatchedFilesCapabilities;
import org.eclipse.lsp4j.DocumentSymbolCapabilities;
import org.eclipse.lsp4j.FoldingRangeCapabilities;
import org.eclipse.lsp4j.GeneralClientCapabilities;
import org.eclipse.lsp4j.InlayHintWorkspaceCapabilities;
import org.eclipse.lsp4j.MarkdownCapabilities;
import org.eclipse.lsp4j.ParameterInformationCapabilities;
import org.eclipse.lsp4j.PositionEncodingKind;
import org.eclipse.lsp4j.PublishDiagnosticsCapabilities;
import org.eclipse.lsp4j.RenameCapabilities;
import org.eclipse.lsp4j.SignatureHelpCapabilities;
import org.eclipse.lsp4j.SignatureInformationCapabilities;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.WorkspaceEditCapabilities;

/**
 * What the editor has announced that it can do, as far as an answer depends on it.
 *
 * @param encoding the agreed units of positions
 * @param pullsDiagnostics whether it asks for diagnostics itself
 * @param refreshesDiagnostics whether it can be told to ask again
 * @param refreshesHints whether it can be told to ask again for remarks between the words
 * @param relatesDiagnostics whether it shows related places of a diagnostic
 * @param linksCodes whether it links the code of a diagnostic to a page
 * @param watchesFiles whether it can be told which files to watch
 * @param pullsSettings whether it can be asked for its settings
 * @param watchesSettings whether it can be told to report changes of settings
 * @param takesActions whether it takes code actions that hold their edit
 * @param versionsEdits whether an edit may name the version of its document
 * @param coloursTokens whether it asks for what each word is
 * @param preparesRenames whether it asks what a rename would change
 * @param nestsSymbols whether it shows an outline as a tree
 * @param takesLabelOffsets whether a setting in a signature may be given by its offsets
 * @param foldsWholeLines whether it folds whole lines only
 * @param foldingLimit how many folding ranges it takes at most
 * @param drawsImages whether its Markdown shows pictures
 * @param completion what it can do with what is proposed
 */
record ClientTraits(
    PositionEncoding encoding,
    boolean pullsDiagnostics,
    boolean refreshesDiagnostics,
    boolean refreshesHints,
    boolean relatesDiagnostics,
    boolean linksCodes,
    boolean watchesFiles,
    boolean pullsSettings,
    boolean watchesSettings,
    boolean takesActions,
    boolean versionsEdits,
    boolean coloursTokens,
    boolean preparesRenames,
    boolean nestsSymbols,
    boolean takesLabelOffsets,
    boolean foldsWholeLines,
    int foldingLimit,
    boolean drawsImages,
    CompletionTraits completion) {

  static ClientTraits of(ClientCapabilities announced) {
    Optional<TextDocumentClientCapabilities> text =
        Optional.ofNullable(announced.getTextDocument());
    Optional<WorkspaceClientCapabilities> workspace = Optional.ofNullable(announced.getWorkspace());
    Optional<GeneralClientCapabilities> general = Optional.ofNullable(announced.getGeneral());
    Optional<FoldingRangeCapabilities> folding =
        text.map(TextDocumentClientCapabilities::getFoldingRange);
    return new ClientTraits(
        encoding(general.map(GeneralClientCapabilities::getPositionEncodings).orElse(List.of())),
        text.map(TextDocumentClientCapabilities::getDiagnostic).isPresent(),
        is(
            workspace.map(WorkspaceClientCapabilities::getDiagnostics),
            diagnostics -> diagnostics.getRefreshSupport()),
        is(
            workspace.map(WorkspaceClientCapabilities::getInlayHint),
            InlayHintWorkspaceCapabilities::getRefreshSupport),
        is(
            text.map(TextDocumentClientCapabilities::getPublishDiagnostics),
            PublishDiagnosticsCapabilities::getRelatedInformation),
        is(
            text.map(TextDocumentClientCapabilities::getPublishDiagnostics),
            PublishDiagnosticsCapabilities::getCodeDescriptionSupport),
        is(
            workspace.map(WorkspaceClientCapabilities::getDidChangeWatchedFiles),
            DidChangeWatchedFilesCapabilities::getDynamicRegistration),
        is(workspace, WorkspaceClientCapabilities::getConfiguration),
        is(
            workspace.map(WorkspaceClientCapabilities::getDidChangeConfiguration),
            DidChangeConfigurationCapabilities::getDynamicRegistration),
        text.map(TextDocumentClientCapabilities::getCodeAction)
            .map(CodeActionCapabilities::getCodeActionLiteralSupport)
            .isPresent(),
        is(
            workspace.map(WorkspaceClientCapabilities::getWorkspaceEdit),
            WorkspaceEditCapabilities::getDocumentChanges),
        text.map(TextDocumentClientCapabilities::getSemanticTokens).isPresent(),
        is(
            text.map(TextDocumentClientCapabilities::getRename),
            RenameCapabilities::getPrepareSupport),
        is(
            text.map(TextDocumentClientCapabilities::getDocumentSymbol),
            DocumentSymbolCapabilities::getHierarchicalDocumentSymbolSupport),
        is(
            text.map(TextDocumentClientCapabilities::getSignatureHelp)
                .map(SignatureHelpCapabilities::getSignatureInformation)
                .map(SignatureInformationCapabilities::getParameterInformation),
            ParameterInformationCapabilities::getLabelOffsetSupport),
        is(folding, FoldingRangeCapabilities::getLineFoldingOnly),
        folding.map(FoldingRangeCapabilities::getRangeLimit).orElse(Integer.MAX_VALUE),
        general
            .map(GeneralClientCapabilities::getMarkdown)
            .map(MarkdownCapabilities::getParser)
            .filter("marked"::equals)
            .isPresent(),
        CompletionTraits.of(text.map(TextDocumentClientCapabilities::getCompletion)));
  }

  /** UTF-16 where offered or where nothing is: it costs nothing here and every editor knows it. */
  private static PositionEncoding encoding(List<String> offered) {
    if (offered.isEmpty() || offered.contains(PositionEncodingKind.UTF16)) {
      return PositionEncoding.UTF_16;
    }
    if (offered.contains(PositionEncodingKind.UTF8)) {
      return PositionEncoding.UTF_8;
    }
    return offered.contains(PositionEncodingKind.UTF32)
        ? PositionEncoding.UTF_32
        : PositionEncoding.UTF_16;
  }

  private static <C> boolean is(Optional<C> capability, Function<C, Boolean> flag) {
    return capability.map(flag).orElse(false);
  }
}
