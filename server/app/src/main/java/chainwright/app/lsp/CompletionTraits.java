package chainwright.app.lsp;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.CompletionItemInsertTextModeSupportCapabilities;
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

  static CompletionTraits of(Optional<CompletionCapabilities> announced) {
    Optional<CompletionItemCapabilities> item =
        announced.map(CompletionCapabilities::getCompletionItem);
    return new CompletionTraits(
        item.map(CompletionItemCapabilities::getSnippetSupport).orElse(false),
        item.map(CompletionItemCapabilities::getInsertTextModeSupport)
            .map(CompletionItemInsertTextModeSupportCapabilities::getValueSet)
            .orElse(List.of())
            .contains(InsertTextMode.AdjustIndentation),
        item.map(CompletionItemCapabilities::getInsertReplaceSupport).orElse(false),
        item.map(CompletionItemCapabilities::getDocumentationFormat)
            .orElse(List.of())
            .contains(MarkupKind.MARKDOWN));
  }
}
