package chainwright.app.lsp;

import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupKind;

/**
 * What the editor has announced about completion.
 *
 * @param takesSnippets whether a text may hold stops
 * @param adjustsIndentation whether it can indent the further lines of a text as the first one
 * @param choosesReplacing whether its user can choose to keep what stands behind the caret
 * @param readsMarkdown whether its documentation may be Markdown
 */
record CompletionTraits(
    boolean takesSnippets,
    boolean adjustsIndentation,
    boolean choosesReplacing,
    boolean readsMarkdown) {

  static CompletionTraits of(Announced announced) {
    return new CompletionTraits(
        announced.is("textDocument", "completion", "completionItem", "snippetSupport"),
        announced
            .numbers(
                "textDocument", "completion", "completionItem", "insertTextModeSupport", "valueSet")
            .contains(InsertTextMode.AdjustIndentation.getValue()),
        announced.is("textDocument", "completion", "completionItem", "insertReplaceSupport"),
        announced
            .words("textDocument", "completion", "completionItem", "documentationFormat")
            .contains(MarkupKind.MARKDOWN));
  }
}
