package chainwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Model.ArgSpec;

/** What a shell may offer where an option or a parameter takes a word. */
final class CompletedWord {

  private CompletedWord() {}

  /** The words of a closed list, in the lower case in which they are documented. */
  static List<String> choices(ArgSpec argument) {
    List<String> choices = new ArrayList<>();
    if (argument.completionCandidates() != null) {
      boolean isEnum = argument.auxiliaryTypes()[0].isEnum();
      for (String choice : argument.completionCandidates()) {
        choices.add(isEnum ? choice.toLowerCase(Locale.ROOT) : choice);
      }
    }
    return choices;
  }

  /** Whether files are meant; some parameters take a name or a file, as their label says. */
  static boolean isFile(ArgSpec argument) {
    return argument.auxiliaryTypes()[0] == Path.class || argument.paramLabel().contains("FILE");
  }

  /** The first sentence of a description, on one line and without its full stop. */
  static String summary(ArgSpec argument) {
    String text =
        String.join(" ", argument.description()).replace("%n", " ").replace("%%", "%").strip();
    int end = text.indexOf(". ");
    String sentence = end < 0 ? text : text.substring(0, end);
    int clause = sentence.indexOf("; ");
    String first = clause < 0 ? sentence : sentence.substring(0, clause);
    return first.endsWith(".") ? first.substring(0, first.length() - 1) : first;
  }
}
