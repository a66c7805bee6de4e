package chainwright.app.lsp;

import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.MissingTakes;
import chainwright.app.workspace.Workspace;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import org.eclipse.lsp4j.Diagnostic;

/**
 * Keeps the findings that an editor shows up to date, where it does not ask for them itself.
 *
 * <p>Documents that need a new look stand in a queue, each once. One thread works it off; it gives
 * up a document that is edited meanwhile, since the edit has put it into the queue again.
 */
final class FindingsPublisher {

  private final Session session;
  private final ExecutorService worker;
  private final Set<DocumentPath> due = new LinkedHashSet<>();
  private boolean isWorking;

  FindingsPublisher(Session session, ExecutorService worker) {
    this.session = session;
    this.worker = worker;
  }

  /** Looks anew at a document that was edited, then at those that import it. */
  void changed(DocumentPath path) {
    if (session.traits().pullsDiagnostics()) {
      return;
    }
    enqueue(List.of(path));
    enqueue(importersOf(List.of(path)));
  }

  /**
   * Looks anew at the open documents that import files whose text on disk is another, or that name
   * recordings which have come or gone.
   */
  void changedOnDisk(List<DocumentPath> paths) {
    refreshHints();
    if (session.traits().pullsDiagnostics()) {
      refresh();
    } else {
      Set<DocumentPath> affected = new LinkedHashSet<>(importersOf(paths));
      for (DocumentSnapshot open : session.documents().opened()) {
        if (MissingTakes.names(open, paths)) {
          affected.add(open.path());
        }
      }
      enqueue(affected);
    }
  }

  /** Looks anew at everything that is open. */
  void changedEverything() {
    refreshHints();
    if (session.traits().pullsDiagnostics()) {
      refresh();
    } else {
      enqueue(session.documents().opened().stream().map(DocumentSnapshot::path).toList());
    }
  }

  /** Takes back what was shown for a document that is no longer open. */
  void closed(DocumentSnapshot document) {
    if (!session.traits().pullsDiagnostics()) {
      worker.execute(
          () -> {
            if (isClosed(document)) {
              session.editor().publish(document.uri(), Optional.empty(), List.of());
            }
          });
    }
  }

  private boolean isClosed(DocumentSnapshot document) {
    return session.documents().opened().stream()
        .noneMatch(open -> open.path().equals(document.path()));
  }

  private void refreshHints() {
    if (session.traits().refreshesHints()) {
      session.editor().refreshHints();
    }
  }

  private void refresh() {
    if (session.traits().refreshesDiagnostics()) {
      session.editor().refreshDiagnostics();
    }
  }

  private Collection<DocumentPath> importersOf(Collection<DocumentPath> changed) {
    Workspace workspace = session.documents().workspace();
    Set<DocumentPath> importers = new LinkedHashSet<>();
    for (DocumentSnapshot open : session.documents().opened()) {
      boolean isReaching =
          workspace.importsOf(open).stream().anyMatch(changed::contains)
              || workspace.reachableFrom(open).stream()
                  .anyMatch(
                      reached ->
                          changed.contains(reached.path())
                              || workspace.importsOf(reached).stream().anyMatch(changed::contains));
      if (isReaching && !changed.contains(open.path())) {
        importers.add(open.path());
      }
    }
    return importers;
  }

  private void enqueue(Collection<DocumentPath> paths) {
    synchronized (due) {
      due.addAll(paths);
      if (isWorking || due.isEmpty()) {
        return;
      }
      isWorking = true;
    }
    worker.execute(this::workOff);
  }

  private void workOff() {
    for (Optional<DocumentPath> next = take(); next.isPresent(); next = take()) {
      publishFor(next.get());
    }
  }

  private Optional<DocumentPath> take() {
    synchronized (due) {
      Optional<DocumentPath> first = due.stream().findFirst();
      first.ifPresent(due::remove);
      isWorking = first.isPresent();
      return first;
    }
  }

  private void publishFor(DocumentPath path) {
    Workspace workspace = session.documents().workspace();
    Optional<DocumentSnapshot> found =
        workspace.document(path).filter(document -> document.version().isPresent());
    if (found.isEmpty()) {
      return;
    }
    DocumentSnapshot document = found.get();
    try {
      Request request =
          new Request(
              document,
              workspace,
              session.traits(),
              session.settings(),
              session.judgements(),
              session.spread(),
              () -> {
                if (!session.documents().isNewest(document)) {
                  throw new CancellationException();
                }
              });
      List<Diagnostic> diagnostics = FoundDiagnostics.of(request);
      request.cancel().checkCanceled();
      session.editor().publish(document.uri(), document.version(), diagnostics);
    } catch (CancellationException e) {
      // The edit that cancelled this look has asked for the next one.
    }
  }
}
