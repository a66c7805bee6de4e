package chainwright.app.cli;

import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;

/** Counts findings in words. */
final class FindingCounts {

  private FindingCounts() {}

  /**
   * Sums up what was found.
   *
   * @param checked the files
   * @return such as "2 files checked: 1 error, 2 warnings, 1 for information"
   */
  static String summary(List<CheckedFile> checked) {
    List<String> counts = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count =
          checked.stream()
              .flatMap(file -> file.findings().found().stream())
              .filter(one -> one.finding().severity() == severity)
              .count();
      if (count > 0) {
        counts.add(count + " " + word(severity, count == 1));
      }
    }
    return checked.size()
        + (checked.size() == 1 ? " file" : " files")
        + " checked: "
        + (counts.isEmpty() ? "nothing to report" : String.join(", ", counts));
  }

  private static String word(Severity severity, boolean isOne) {
    return switch (severity) {
      case ERROR -> isOne ? "error" : "errors";
      case WARNING -> isOne ? "warning" : "warnings";
      case INFO -> "for information";
      case HINT -> isOne ? "hint" : "hints";
    };
  }
}
