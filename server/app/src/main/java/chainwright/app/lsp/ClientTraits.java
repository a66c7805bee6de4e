package chainwright.app.lsp;

import chainwright.app.workspace.PositionEncoding;
import java.util.List;
import org.eclipse.lsp4j.PositionEncodingKind;

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

  static ClientTraits of(Announced announced) {
    return new ClientTraits(
        encoding(announced.words("general", "positionEncodings")),
        announced.has("textDocument", "diagnostic"),
        announced.is("workspace", "diagnostics", "refreshSupport"),
        announced.is("workspace", "inlayHint", "refreshSupport"),
        announced.is("textDocument", "publishDiagnostics", "relatedInformation"),
        announced.is("textDocument", "publishDiagnostics", "codeDescriptionSupport"),
        announced.is("workspace", "didChangeWatchedFiles", "dynamicRegistration"),
        announced.is("workspace", "configuration"),
        announced.is("workspace", "didChangeConfiguration", "dynamicRegistration"),
        announced.has("textDocument", "codeAction", "codeActionLiteralSupport"),
        announced.is("workspace", "workspaceEdit", "documentChanges"),
        announced.has("textDocument", "semanticTokens"),
        announced.is("textDocument", "rename", "prepareSupport"),
        announced.is("textDocument", "documentSymbol", "hierarchicalDocumentSymbolSupport"),
        announced.is(
            "textDocument",
            "signatureHelp",
            "signatureInformation",
            "parameterInformation",
            "labelOffsetSupport"),
        announced.is("textDocument", "foldingRange", "lineFoldingOnly"),
        announced.number("textDocument", "foldingRange", "rangeLimit").orElse(Integer.MAX_VALUE),
        announced.words("general", "markdown", "parser").contains("marked"),
        CompletionTraits.of(announced));
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
}
