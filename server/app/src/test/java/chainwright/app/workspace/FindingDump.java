package chainwright.app.workspace;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.LineIndex;
import chainwright.notation.text.TextSpan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Findings as text: a line for where and what, then why, what to do, the sources, the other places
 * and the fixes, each with the lines that it leaves in place of the old ones. Lines and columns
 * count from 1, the second column is the first that is no longer underlined.
 */
final class FindingDump {

  private final DocumentSnapshot document;
  private final List<Finding> findings;
  private final Workspace.Finder finder;
  private final String text;
  private final LineIndex lines;

  private FindingDump(DocumentSnapshot document, List<Finding> findings, Workspace.Finder finder) {
    this.document = document;
    this.findings = findings;
    this.finder = finder;
    this.text = document.text();
    this.lines = LineIndex.of(text);
  }

  /** Takes what a person is told of a document: everything that stands in it, in its order. */
  static FindingDump of(DocumentSnapshot document, Workspace workspace, Judgements judgements) {
    List<DocumentSnapshot> documents = new ArrayList<>(List.of(document));
    documents.addAll(workspace.reachableFrom(document));
    Workspace.Finder finder = Workspace.finderIn(documents);
    List<Finding> findings = new ArrayList<>();
    for (Finding finding : judgements.of(document, workspace)) {
      boolean isHere =
          finder.find(finding.place()).filter(at -> at.document().equals(document)).isPresent();
      if (isHere) {
        findings.add(finding);
      }
    }
    FindingDump dump = new FindingDump(document, findings, finder);
    findings.sort(Comparator.comparingInt(dump::start));
    return dump;
  }

  /** The same of a text that is taken to stand in a file, with nothing remembered from before. */
  static FindingDump of(Path file, String text, SectionReader reader) {
    DocumentSnapshot document =
        DocumentSnapshot.ofDisk(DocumentPath.ofFile(file.toAbsolutePath()), text, reader);
    return of(
        document,
        Workspace.ofFolders(List.of(), reader),
        new Judgements(reader.catalogue(), reader.spread()));
  }

  List<Finding> findings() {
    return findings;
  }

  /** The line at which a finding begins, counted from 1. */
  int line(Finding finding) {
    return lines.lineAt(start(finding)) + 1;
  }

  /** Where a finding stands, such as "3:9-12". */
  String where(Finding finding) {
    int start = start(finding);
    return line(finding)
        + ":"
        + column(start)
        + "-"
        + column(start + finding.place().span().length());
  }

  /** The text of the document. */
  String text() {
    return text;
  }

  /** The words that a finding underlines. */
  String words(Finding finding) {
    TextSpan span = finding.place().span();
    return finding.place().section().text().substring(span.start(), span.end());
  }

  /** The document's text after a fix. */
  String apply(Fix fix) {
    StringBuilder changed = new StringBuilder(text);
    fix.edits().stream()
        .sorted(Comparator.comparingInt((PlacedEdit one) -> one.edit().span().start()).reversed())
        .forEach(
            one -> {
              int base = startOf(one.section());
              TextSpan span = one.edit().span();
              changed.replace(base + span.start(), base + span.end(), one.edit().newText());
            });
    return changed.toString();
  }

  @Override
  public String toString() {
    StringBuilder out = new StringBuilder();
    findings.forEach(one -> append(one, out));
    return out.toString();
  }

  private int start(Finding finding) {
    return startOf(finding.place().section()) + finding.place().span().start();
  }

  private int startOf(Section section) {
    for (int i = 0; i < document.tree().sections().size(); i++) {
      if (document.tree().sections().get(i) == section) {
        return document.tree().startOf(i);
      }
    }
    throw new IllegalArgumentException("the section must belong to the document");
  }

  private void append(Finding finding, StringBuilder out) {
    int start = start(finding);
    out.append(
        String.format(
            Locale.ROOT,
            "%d:%d-%d %s %s %s\n",
            lines.lineAt(start) + 1,
            column(start),
            column(start + finding.place().span().length()),
            finding.severity().name().toLowerCase(Locale.ROOT),
            finding.code(),
            finding.what()));
    if (!finding.why().isEmpty()) {
      out.append("    why ").append(finding.why()).append('\n');
    }
    if (!finding.remedy().isEmpty()) {
      out.append("    do ").append(finding.remedy()).append('\n');
    }
    finding.sources().forEach(one -> out.append("    source ").append(one).append('\n'));
    for (Finding.Related related : finding.related()) {
      finder
          .find(related.place())
          .filter(at -> at.document().equals(document))
          .map(at -> lines.lineAt(at.span().start()) + 1)
          .ifPresent(
              line ->
                  out.append("    see ")
                      .append(line)
                      .append(": ")
                      .append(related.what())
                      .append('\n'));
    }
    for (Fix fix : finding.fixes()) {
      out.append(fix.isPreferred() ? "    fix (preferred, " : "    fix (")
          .append(fix.effect().name().toLowerCase(Locale.ROOT).replace('_', ' '))
          .append(") ")
          .append(fix.title())
          .append('\n');
      appendChange(apply(fix), out);
    }
  }

  private int column(int offset) {
    return offset - lines.startOf(lines.lineAt(offset)) + 1;
  }

  private void appendChange(String changed, StringBuilder out) {
    List<String> before = Arrays.asList(text.split("\\R", -1));
    List<String> after = Arrays.asList(changed.split("\\R", -1));
    int same = 0;
    int shorter = Math.min(before.size(), after.size());
    while (same < shorter && before.get(same).equals(after.get(same))) {
      same++;
    }
    int tail = 0;
    while (tail < shorter - same
        && before.get(before.size() - 1 - tail).equals(after.get(after.size() - 1 - tail))) {
      tail++;
    }
    for (String line : after.subList(same, after.size() - tail)) {
      out.append("      | ").append(line).append('\n');
    }
  }
}
