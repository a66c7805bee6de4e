package chainwright.app.lsp;

import chainwright.app.assist.Rewrite;
import chainwright.app.assist.UsualOrder;
import chainwright.app.assist.WidthRewrites;
import chainwright.app.workspace.Findings;
import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;

/** Offers other ways to write what stands at a place; none is ever the preferred one. */
final class RewriteActions {

  private RewriteActions() {}

  /**
   * Returns the rewrites of what a range touches. The order of a chain is proposed on its first
   * line, or where several of its lines are selected: it concerns them all.
   */
  static List<CodeAction> of(TextSpan range, Findings findings, Request request) {
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(range.start());
    int start = file.tree().startOf(index);
    List<CodeAction> actions = new ArrayList<>();
    file.sections()
        .get(index)
        .definition()
        .ifPresent(
            definition -> {
              int length = definition.section().length();
              TextSpan own =
                  new TextSpan(range.start() - start, Math.min(length, range.end() - start));
              List<Rewrite> rewrites = new ArrayList<>(WidthRewrites.in(definition, own));
              if (isAboutAll(definition, own)) {
                UsualOrder.of(definition).ifPresent(rewrites::add);
              }
              for (Rewrite rewrite : rewrites) {
                WorkspaceEdits.of(rewrite.edits(), findings.finder(), request)
                    .ifPresent(
                        edit -> {
                          CodeAction action = new CodeAction(rewrite.title());
                          action.setKind(CodeActionKind.RefactorRewrite);
                          action.setEdit(edit);
                          action.setIsPreferred(false);
                          actions.add(action);
                        });
              }
            });
    return actions;
  }

  private static boolean isAboutAll(Definition definition, TextSpan range) {
    boolean isOverLines =
        definition.section().text().substring(range.start(), range.end()).contains("\n");
    return isOverLines || definition.lineSpan().isTouching(range);
  }
}
