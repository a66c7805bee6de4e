package chainwright.app.lsp;

import java.util.List;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RelatedUnchangedDocumentDiagnosticReport;

/** {@code textDocument/diagnostic}: the findings, where the editor asks for them. */
final class PulledDiagnostics {

  private PulledDiagnostics() {}

  static DocumentDiagnosticReport answer(DocumentDiagnosticParams params, Request request) {
    List<Diagnostic> diagnostics = FoundDiagnostics.of(request);
    // The name of a result is made from what it says, so it is right whatever it depended on.
    String name = Integer.toHexString(diagnostics.toString().hashCode());
    if (name.equals(params.getPreviousResultId())) {
      return new DocumentDiagnosticReport(new RelatedUnchangedDocumentDiagnosticReport(name));
    }
    RelatedFullDocumentDiagnosticReport report =
        new RelatedFullDocumentDiagnosticReport(diagnostics);
    report.setResultId(name);
    return new DocumentDiagnosticReport(report);
  }
}
