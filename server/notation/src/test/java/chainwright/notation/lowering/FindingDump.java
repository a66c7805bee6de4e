package chainwright.notation.lowering;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.LineIndex;
import chainwright.notation.text.TextSpan;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Findings as text: a line for where and what, then why, what to do and the fixes, each with the
 * lines that it leaves in place of the old ones. Lines and columns count from 1, the second column
 * is the first that is no longer underlined.
 */
final class FindingDump {

  private final SourceFile file;
  private final String text;
  private final LineIndex lines;

  private FindingDump(SourceFile file) {
    this.file = file;
    this.text = file.tree().text();
    this.lines = LineIndex.of(text);
  }

  /** Writes what is wrong with a file, in the order of the text. */
  static String of(SourceFile file) {
    FindingDump dump = new FindingDump(file);
    StringBuilder out = new StringBuilder();
    findings(file).stream()
        .sorted(Comparator.comparingInt(one -> start(file, one)))
        .forEach(one -> dump.append(one, out));
    return out.toString();
  }

  static List<Finding> findings(SourceFile file) {
    return file.sections().stream().flatMap(section -> section.findings().stream()).toList();
  }

  /** The offset in the file at which a finding begins. */
  static int start(SourceFile file, Finding finding) {
    return startOf(file, finding.place().section()) + finding.place().span().start();
  }

  /** The words that a finding underlines. */
  static String words(Finding finding) {
    TextSpan span = finding.place().span();
    return finding.place().section().text().substring(span.start(), span.end());
  }

  /** The file's text after a fix. */
  static String apply(SourceFile file, Fix fix) {
    StringBuilder changed = new StringBuilder(file.tree().text());
    fix.edits().stream()
        .sorted(Comparator.comparingInt((PlacedEdit one) -> one.edit().span().start()).reversed())
        .forEach(
            one -> {
              int base = startOf(file, one.section());
              TextSpan span = one.edit().span();
              changed.replace(base + span.start(), base + span.end(), one.edit().newText());
            });
    return changed.toString();
  }

  private static int startOf(SourceFile file, Section section) {
    for (int i = 0; i < file.tree().sections().size(); i++) {
      if (file.tree().sections().get(i) == section) {
        return file.tree().startOf(i);
      }
    }
    throw new IllegalArgumentException("the section must belong to the file");
  }

  private void append(Finding finding, StringBuilder out) {
    int start = start(file, finding);
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
    for (Fix fix : finding.fixes()) {
      out.append(fix.isPreferred() ? "    fix (preferred, " : "    fix (")
          .append(fix.effect().name().toLowerCase(Locale.ROOT).replace('_', ' '))
          .append(") ")
          .append(fix.title())
          .append('\n');
      appendChange(apply(file, fix), out);
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
