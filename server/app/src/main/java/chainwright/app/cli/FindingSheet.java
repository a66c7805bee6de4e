package chainwright.app.cli;

import chainwright.app.page.Wrapping;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;

/**
 * Prints findings for people: what is the case, the line it stands in, then why and what to do.
 *
 * @param out where to
 * @param terminal what it is read on
 */
record FindingSheet(PrintWriter out, Terminal terminal) {

  private static final String MARGIN = " ".repeat(9);
  private static final int LABEL = 8;
  private static final String BOLD = "1";
  private static final String FAINT = "2";

  void print(CheckedFile file, Findings.Found found) {
    Finding finding = found.finding();
    CountedPlace start = CountedPlace.of(file.document(), found.at().span().start());
    String colour = colour(finding.severity());
    heading(finding, colour);
    String code = "  " + finding.code();
    out.println(
        MARGIN
            + terminal.painted(
                FAINT, file.file() + ":" + start.line() + ":" + start.column() + code));
    line(file.document(), found, start.line(), colour);
    entry("why", finding.why());
    entry("do", finding.remedy());
    if (!finding.sources().isEmpty()) {
      entry("source", SourceNames.brief(finding.sources(), finding.topic(), room() - LABEL));
    }
    for (Finding.Related related : finding.related()) {
      file.find(related.place())
          .ifPresent(
              at ->
                  entry(
                      "see",
                      CountedPlace.of(at.document(), at.span().start()).line()
                          + (file.holds(at) ? ": " : " of " + at.document().path().key() + ": ")
                          + related.what()));
    }
    for (Fix fix : finding.fixes()) {
      entry("fix", fix.title() + " (" + fix.effect().inWords() + ")");
    }
    out.println();
  }

  private int room() {
    return terminal.width() - MARGIN.length();
  }

  private void heading(Finding finding, String colour) {
    String word = finding.severity().name().toLowerCase(Locale.ROOT);
    String head =
        terminal.painted(BOLD + ";" + colour, word) + " ".repeat(MARGIN.length() - word.length());
    for (String line : Wrapping.lines(printable(finding.what()), room())) {
      out.println(head + line);
      head = MARGIN;
    }
  }

  private void line(DocumentSnapshot document, Findings.Found found, int number, String colour) {
    int from = document.lines().startOf(number - 1);
    String text = document.text().substring(from, document.lines().startOf(number)).stripTrailing();
    SourceLine line =
        SourceLine.of(
            text, found.at().span().start() - from, found.at().span().end() - from, room());
    out.println(terminal.painted(FAINT, String.format(Locale.ROOT, "%7d  ", number)) + line.text());
    out.println(
        MARGIN
            + " ".repeat(line.before())
            + terminal.painted(BOLD + ";" + colour, "^".repeat(line.marked())));
  }

  private void entry(String label, String text) {
    if (text.isBlank()) {
      return;
    }
    List<String> lines = Wrapping.lines(printable(text), room() - LABEL);
    out.println(
        MARGIN
            + terminal.painted(FAINT, label)
            + " ".repeat(LABEL - label.length())
            + lines.get(0));
    lines.stream().skip(1).forEach(line -> out.println(MARGIN + " ".repeat(LABEL) + line));
  }

  /** Returns a text without characters that could move the terminal's cursor. */
  private static String printable(String text) {
    return text.replaceAll("[\\p{Cntrl}&&[^\\s]]", "\ufffd");
  }

  private static String colour(Severity severity) {
    return switch (severity) {
      case ERROR -> "31";
      case WARNING -> "33";
      case INFO -> "34";
      case HINT -> "36";
    };
  }
}
