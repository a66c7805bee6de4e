package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Name;
import chainwright.notation.text.TextEdit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How a name is spelt: lower-case words of letters and digits, joined by hyphens. */
public final class Kebab {

  private Kebab() {}

  /**
   * Asks whether a text can be a name.
   *
   * @param text such as "hull-guard"
   * @return whether it is spelt as names are
   */
  public static boolean isWellFormed(String text) {
    boolean isAfterHyphen = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean isDigit = c >= '0' && c <= '9';
      boolean isPart = (c >= 'a' && c <= 'z') || (isDigit && i > 0);
      if (!isPart && (c != '-' || isAfterHyphen)) {
        return false;
      }
      isAfterHyphen = !isPart;
    }
    return !isAfterHyphen;
  }

  /** The name that a text comes nearest to; empty if it holds no letter to begin with. */
  static Optional<String> of(String text) {
    String plain =
        text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    return Optional.of(plain).filter(Kebab::isWellFormed);
  }

  /** Reports a name that is being given and is spelt in another way. */
  static void check(Name name, Report report) {
    if (isWellFormed(name.text())) {
      return;
    }
    report.add(
        Fault.MALFORMED_NAME,
        name.span(),
        "the name `" + name.text() + "` is not in lower case with hyphens",
        "One way of spelling names keeps one thing from having two.",
        of(name.text()).map(one -> "Write `" + one + "`.").orElse("Write a name such as `bite`."),
        of(name.text())
            .map(
                one ->
                    List.of(report.rename("Write `" + one + "`", new TextEdit(name.span(), one))))
            .orElse(List.of()));
  }
}
