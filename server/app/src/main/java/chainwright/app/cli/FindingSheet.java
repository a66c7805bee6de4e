package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.io.PrintWriter;
import java.util.Locale;

/**
 * Prints findings for people: what is the case, the line it stands in, then why and what to do.
 *
 * @param out where to
 * @param isColoured whether the terminal understands escape sequences of ISO/IEC 6429
 */
record FindingSheet(PrintWriter out, boolean isColoured) {

  private static final int WIDTH = 100;
  private static final String MARGIN = " ".repeat(9);
  private static final int LABEL = 8;
  private static final String BOLD = "1";
  private static final String FAINT = "2";

  void print(FoundFinding found) {
    Finding finding = found.finding();
    String colour = colour(finding.severity());
    String word = finding.severity().name().toLowerCase(Locale.ROOT);
    paragraph(
        painted(BOLD + ";" + colour, word) + " ".repeat(MARGIN.length() - word.length()),
        capital(finding.what()));
    CountedPlace start = found.start();
    out.println(
        MARGIN
            + painted(
                FAINT,
                found.file() + ":" + start.line() + ":" + start.column() + "  " + finding.code()));
    line(found, start, colour);
    entry("why", finding.why());
    entry("do", finding.remedy());
    for (String source : finding.sources()) {
      entry("source", source);
    }
    for (Finding.Related related : finding.related()) {
      found
          .finder()
          .find(related.place())
          .ifPresent(
              at ->
                  entry(
                      "see",
                      CountedPlace.of(at.document(), at.span().start()).line()
                          + (at.document().equals(found.document())
                              ? ": "
                              : " of " + at.document().path().key() + ": ")
                          + related.what()));
    }
    for (Fix fix : finding.fixes()) {
      boolean isSame = fix.effect() == Fix.Effect.KEEPS_THE_SOUND;
      entry("fix", fix.title() + (isSame ? " (keeps the sound)" : " (changes the sound)"));
    }
    out.println();
  }

  private void line(FoundFinding found, CountedPlace start, String colour) {
    DocumentSnapshot document = found.document();
    int from = document.lines().startOf(start.line() - 1);
    String text = document.text().substring(from, document.lines().startOf(start.line()));
    String plain = shown(text.stripTrailing());
    String number = String.format(Locale.ROOT, "%7d  ", start.line());
    int before = start.column() - 1;
    int end = Math.min(found.span().end(), from + text.stripTrailing().length());
    int marked = Math.max(1, CountedPlace.of(document, end).column() - start.column());
    out.println(painted(FAINT, number) + plain);
    out.println(MARGIN + " ".repeat(before) + painted(BOLD + ";" + colour, "^".repeat(marked)));
  }

  /** Returns a line without characters that could move the terminal's cursor. */
  private static String shown(String line) {
    StringBuilder shown = new StringBuilder();
    line.codePoints()
        .map(one -> one == '\t' ? ' ' : Character.isISOControl(one) ? 0xFFFD : one)
        .forEach(shown::appendCodePoint);
    return shown.toString();
  }

  private void entry(String label, String text) {
    if (!text.isBlank()) {
      paragraph(MARGIN + painted(FAINT, label) + " ".repeat(LABEL - label.length()), text);
    }
  }

  private void paragraph(String head, String text) {
    String indent = head.startsWith(MARGIN) ? MARGIN + " ".repeat(LABEL) : MARGIN;
    StringBuilder line = new StringBuilder();
    String margin = head;
    for (String word : shown(text).split(" ", -1)) {
      if (!line.isEmpty() && indent.length() + line.length() + word.length() >= WIDTH) {
        out.println(margin + line);
        line.setLength(0);
        margin = indent;
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    out.println(margin + line);
  }

  private static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }

  private String painted(String code, String text) {
    return isColoured ? "\u001b[" + code + "m" + text + "\u001b[0m" : text;
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
