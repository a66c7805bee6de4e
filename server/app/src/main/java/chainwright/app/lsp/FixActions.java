package chainwright.app.lsp;

import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.text.LineIndex;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/**
 * {@code textDocument/codeAction}: the fixes of findings, and other ways to write a line. Which
 * findings is computed from the range: many editors do not send them back. On saving, only what
 * keeps the sound is applied.
 */
final class FixActions {

  static final String FIX_ALL = CodeActionKind.SourceFixAll + ".chainwright";

  private final Request request;
  private final Findings findings;

  private FixActions(Request request) {
    this.request = request;
    this.findings = request.findings();
  }

  static List<Either<Command, CodeAction>> answer(CodeActionParams params, Request request) {
    FixActions actions = new FixActions(request);
    List<CodeAction> offered = new ArrayList<>();
    List<String> only = params.getContext() == null ? null : params.getContext().getOnly();
    if (only == null || only.isEmpty() || isAsked(CodeActionKind.QuickFix, only)) {
      offered.addAll(actions.quickFixes(rangeOf(params, request)));
    }
    if (only == null || only.isEmpty() || isAsked(CodeActionKind.RefactorRewrite, only)) {
      offered.addAll(RewriteActions.of(rangeOf(params, request), actions.findings, request));
    }
    // Offered only where it is asked for: it concerns the file and not the caret.
    if (only != null && isAsked(FIX_ALL, only)) {
      actions.fixAll().ifPresent(offered::add);
    }
    return offered.stream().map(Either::<Command, CodeAction>forRight).toList();
  }

  private static TextSpan rangeOf(CodeActionParams params, Request request) {
    int start = request.offsetOf(params.getRange().getStart());
    int end = request.offsetOf(params.getRange().getEnd());
    return new TextSpan(Math.min(start, end), Math.max(start, end));
  }

  private static boolean isAsked(String kind, List<String> only) {
    return only.stream().anyMatch(asked -> kind.equals(asked) || kind.startsWith(asked + "."));
  }

  /** The fixes of what stands on the lines of the range, those under it first, each once. */
  private List<CodeAction> quickFixes(TextSpan range) {
    LineIndex lines = request.document().lines();
    TextSpan whole =
        new TextSpan(
            lines.startOf(lines.lineAt(range.start())),
            lines.startOf(lines.lineAt(range.end()) + 1));
    List<Findings.Found> near = new ArrayList<>();
    for (Findings.Found found : findings.found()) {
      if (found.at().span().isTouching(range)) {
        near.add(found);
      }
    }
    for (Findings.Found found : findings.found()) {
      int start = found.at().span().start();
      if (!near.contains(found) && start >= whole.start() && start < whole.end()) {
        near.add(found);
      }
    }
    return quickFixes(near);
  }

  private List<CodeAction> quickFixes(List<Findings.Found> near) {
    List<CodeAction> actions = new ArrayList<>();
    Set<List<PlacedEdit>> offered = new HashSet<>();
    for (Findings.Found found : near) {
      for (Fix fix : found.finding().fixes()) {
        if (!offered.add(fix.edits())) {
          continue;
        }
        WorkspaceEdits.of(fix.edits(), findings.finder(), request)
            .ifPresent(
                edit -> {
                  boolean isSafe = fix.effect() == Fix.Effect.KEEPS_THE_SOUND;
                  boolean isMeant = fix.effect() != Fix.Effect.CHANGES_THE_SOUND;
                  CodeAction action =
                      new CodeAction(
                          isSafe ? fix.title() : fix.title() + " (" + fix.effect().inWords() + ")");
                  action.setKind(CodeActionKind.QuickFix);
                  action.setEdit(edit);
                  action.setIsPreferred(fix.isPreferred() && isMeant);
                  action.setDiagnostics(
                      List.of(FoundDiagnostics.of(found, findings.finder(), request)));
                  actions.add(action);
                });
      }
    }
    return actions;
  }

  private Optional<CodeAction> fixAll() {
    List<PlacedEdit> edits = new ArrayList<>();
    List<TextSpan> taken = new ArrayList<>();
    int count = 0;
    for (Findings.Found found : findings.found()) {
      Optional<Fix> fix =
          found.finding().fixes().stream()
              .filter(one -> one.effect() == Fix.Effect.KEEPS_THE_SOUND && one.isPreferred())
              .findFirst();
      if (fix.isPresent() && take(fix.get(), taken)) {
        edits.addAll(fix.get().edits());
        count++;
      }
    }
    if (count == 0) {
      return Optional.empty();
    }
    String title = count == 1 ? "Mend 1 fault" : "Mend " + count + " faults";
    return WorkspaceEdits.of(edits, findings.finder(), request)
        .map(
            edit -> {
              CodeAction action = new CodeAction(title + " without changing the sound");
              action.setKind(FIX_ALL);
              action.setEdit(edit);
              return action;
            });
  }

  /** Takes a fix unless it meets one taken before; the next round of fixes will offer it again. */
  private boolean take(Fix fix, List<TextSpan> taken) {
    List<TextSpan> spans = new ArrayList<>();
    for (PlacedEdit placed : fix.edits()) {
      Optional<Workspace.Located> at =
          findings.finder().find(new Place(placed.section(), placed.edit().span()));
      if (at.isEmpty()
          || !at.get().document().equals(request.document())
          || taken.stream().anyMatch(at.get().span()::isTouching)) {
        return false;
      }
      spans.add(at.get().span());
    }
    return taken.addAll(spans);
  }
}
