package chainwright.app.lsp;

import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Location;

/** The findings of a document in the protocol's words. */
final class FoundDiagnostics {

  private FoundDiagnostics() {}

  static List<Diagnostic> of(Request request) {
    Findings findings = request.findings();
    return findings.found().stream().map(found -> of(found, findings.finder(), request)).toList();
  }

  static Diagnostic of(Findings.Found found, Workspace.Finder finder, Request request) {
    Finding finding = found.finding();
    Diagnostic diagnostic =
        new Diagnostic(
            request.rangeOf(found.at().span()),
            message(finding),
            severity(finding, request),
            "chainwright",
            finding.code());
    if (request.client().linksCodes()) {
      FindingPages.shipped()
          .flatMap(pages -> pages.addressOf(finding.code()))
          .ifPresent(
              address -> diagnostic.setCodeDescription(new DiagnosticCodeDescription(address)));
    }
    if (request.client().relatesDiagnostics() && !finding.related().isEmpty()) {
      diagnostic.setRelatedInformation(
          finding.related().stream()
              .flatMap(
                  related ->
                      finder
                          .find(related.place())
                          .map(place -> related(place, related.what(), request))
                          .stream())
              .toList());
    }
    return diagnostic;
  }

  private static DiagnosticRelatedInformation related(
      Workspace.Located place, String what, Request request) {
    return new DiagnosticRelatedInformation(
        new Location(place.document().uri(), request.rangeOf(place.document(), place.span())),
        what);
  }

  private static String message(Finding finding) {
    return Stream.of(finding.what() + ".", finding.why(), finding.remedy())
        .filter(sentence -> !sentence.isBlank())
        .collect(Collectors.joining(" "));
  }

  private static DiagnosticSeverity severity(Finding finding, Request request) {
    Severity severity =
        request.settings().severities().getOrDefault(finding.code(), finding.severity());
    return switch (severity) {
      case ERROR -> DiagnosticSeverity.Error;
      case WARNING -> DiagnosticSeverity.Warning;
      case INFO -> DiagnosticSeverity.Information;
      case HINT -> DiagnosticSeverity.Hint;
    };
  }
}
