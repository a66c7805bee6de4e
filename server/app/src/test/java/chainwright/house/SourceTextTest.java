package chainwright.house;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.format.Formatting;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxTree;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What every file of the project keeps to. An exception stands here by name, with its reason. */
class SourceTextTest {

  private static final int MAX_LINES = 400;

  /** File to reason. */
  private static final Map<String, String> LONGER = Map.of();

  private static final Pattern TOP =
      Pattern.compile(
          "README\\.md|DEVELOPERS\\.md|LICENSE|pom\\.xml|server|grammar|editor-clients|target|\\..*");

  @Test
  void topLevel_asFixed() throws IOException {
    try (Stream<Path> entries = Files.list(Sources.root())) {
      checkNone(entries, entry -> !TOP.matcher(Sources.name(entry)).matches());
    }
  }

  @Test
  void file_ofAtMost400Lines() {
    checkNone(
        Sources.java().stream(),
        file ->
            Sources.text(file).lines().count() > MAX_LINES
                && !LONGER.containsKey(Sources.name(file)));
  }

  @Test
  void longerFile_isStillLong() {
    assertThat(LONGER.keySet())
        .allSatisfy(
            name ->
                assertThat(Sources.text(Sources.root().resolve(name)).lines().count())
                    .isGreaterThan(MAX_LINES));
  }

  @Test
  void file_nothingLeftToDo() {
    // Spelt apart, so that this file does not find itself.
    Pattern mark = Pattern.compile("\\b(TO" + "DO|FIX" + "ME|XX" + "X)\\b");
    checkNone(Sources.java().stream(), file -> mark.matcher(Sources.text(file)).find());
  }

  @Test
  void finelyGivenNumber_hasASource() {
    Pattern fine = Pattern.compile("(?<![\\w.])\\d+\\.\\d{5,}");
    checkNone(
        Sources.shipped().stream(),
        file -> {
          String text = Sources.text(file);
          return fine.matcher(withoutComments(withoutStrings(text))).find()
              && !text.contains("Source:");
        });
  }

  @Test
  void package_marksWhatMayBeNull() {
    List<Path> folders = Sources.shipped().stream().map(Path::getParent).distinct().toList();
    checkNone(
        folders.stream(),
        folder -> {
          Path info = folder.resolve("package-info.java");
          return !Files.exists(info) || !Sources.text(info).contains("@NullMarked");
        });
  }

  @Test
  void forbiddenName_isNotUsed() {
    Pattern vague =
        Pattern.compile(".*(Manager|Helper|Utils?|Impl|Abstract\\w+)\\.java|.*/common/.*");
    checkNone(Sources.java().stream(), file -> vague.matcher(Sources.name(file)).matches());
  }

  /** With a default, a new kind would fall through silently. */
  @Test
  void switchOverSyntaxKind_hasNoDefault() {
    String kinds =
        Arrays.stream(SyntaxKind.values()).map(Enum::name).collect(Collectors.joining("|"));
    Pattern label = Pattern.compile("\\bcase\\s+(" + kinds + ")\\b");
    Pattern byDefault = Pattern.compile("\\bdefault\\s*(->|:)");
    checkNone(
        Sources.shipped().stream(),
        file -> {
          String text = withoutStrings(Sources.text(file));
          return text.contains("SyntaxKind")
              && switchBodies(text).stream()
                  .anyMatch(body -> label.matcher(body).find() && byDefault.matcher(body).find());
        });
  }

  @Test
  void chain_anyOfOurs_everyPrefixParsesAndGivesBackItsText() {
    for (Path file : Sources.chains()) {
      String text = Sources.text(file);
      SyntaxTree tree = SyntaxTree.parse("");
      for (int length = 0; length <= text.length(); length++) {
        String prefix = text.substring(0, length);
        tree = tree.withText(prefix);
        StringBuilder back = new StringBuilder();
        tree.sections().forEach(section -> section.root().appendText(back));
        assertThat(back.toString()).as("%s up to %d", Sources.name(file), length).isEqualTo(prefix);
      }
    }
  }

  @Test
  void chain_anyOfOurs_formattedTwiceIsFormattedOnce() {
    checkNone(
        Sources.chains().stream(),
        file -> {
          String once = Formatting.format(SyntaxTree.parse(Sources.text(file)));
          return !Formatting.format(SyntaxTree.parse(once)).equals(once);
        });
  }

  private static void checkNone(Stream<Path> files, Predicate<Path> isAtFault) {
    assertThat(files.filter(isAtFault).map(Sources::name).toList()).isEmpty();
  }

  private static String withoutStrings(String java) {
    return java.replaceAll("(?s)\"\"\".*?\"\"\"", "\"\"")
        .replaceAll("\"(\\\\.|[^\"\\\\\n])*\"", "\"\"");
  }

  private static String withoutComments(String java) {
    return java.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("//[^\n]*", "");
  }

  /** The bodies of the switches, without those of switches inside them. */
  private static List<String> switchBodies(String text) {
    List<String> bodies = new ArrayList<>();
    Matcher start = Pattern.compile("\\bswitch\\s*\\(").matcher(text);
    while (start.find()) {
      int open = text.indexOf('{', start.end());
      StringBuilder body = new StringBuilder();
      int depth = 0;
      for (int i = open; i >= 0 && i < text.length(); i++) {
        char c = text.charAt(i);
        depth += c == '{' ? 1 : c == '}' ? -1 : 0;
        if (depth == 0) {
          break;
        }
        if (depth == 1) {
          body.append(c);
        }
      }
      bodies.add(body.toString());
    }
    return bodies;
  }
}
