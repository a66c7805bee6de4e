package chainwright.notation.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.Corpus;
import chainwright.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The grammars of editors tell words apart by where they stand, and list only those that say what
 * the next word is; so does the EBNF. {@code -Dgolden.update=true} writes these lists anew.
 */
class EditorWordsTest {

  private static final boolean IS_UPDATE = Boolean.getBoolean("golden.update");

  @BeforeAll
  static void goldenUpdate_onABuildServer_isRefused() {
    assertThat(IS_UPDATE && System.getenv("CI") != null)
        .as("the lists are written at a desk, never by a build server")
        .isFalse();
  }

  /** What the first group of the pattern finds is a list. */
  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '!',
      value = {
        "chain.ebnf            ! units      ! 'unit spelling\\s+= \"(.*)\" ;'            ! '\" | \"'",
        "chain.tmLanguage.json ! statements ! '\"begin\": \"\\(\\(\\?:([^)]*)\\)'            ! '|'",
        "chain.tmLanguage.json ! marks      ! '\"naming-mark\": \\{\\s*\"begin\": \"\\(([^)]*)\\)' ! '|'",
        "chain.tmLanguage.json ! units      ! '\\(\\?i:([^)]*)\\)'                           ! '|'",
        "chain.vim             ! statements ! 's:naming_statements = ''(.*)'''               ! '|'",
        "chain.vim             ! marks      ! 's:naming_marks = ''(.*)'''                    ! '|'",
        "chain.vim             ! units      ! 's:units = ''(.*)'''                           ! '|'",
        "chain.xml             ! statements ! 'ENTITY namingStatements \"(.*)\"'             ! '|'",
        "chain.xml             ! marks      ! 'ENTITY namingMarks \"(.*)\"'                  ! '|'",
        "chain.xml             ! units      ! 'ENTITY units \"(.*)\"'                        ! '|'",
        "lezer/tokens.js       ! statements ! 'namingStatements = new Set\\(''(.*)''\\.split' ! ' '",
        "lezer/tokens.js       ! marks      ! 'namingMarks = new Set\\(''(.*)''\\.split'     ! ' '",
        "lezer/tokens.js       ! units      ! 'units = new Set\\(''(.*)''\\.split'           ! ' '",
        "../editor-clients/emacs/chain-mode.el ! statements ! 'naming-statements ''\\(\"(.*)\"\\)' ! '\" \"'",
        "../editor-clients/emacs/chain-mode.el ! marks ! 'naming-marks ''\\(\"(.*)\"\\)' ! '\" \"'",
        "../editor-clients/emacs/chain-mode.el ! units ! 'chain--units ''\\(\"(.*)\"\\)' ! '\" \"'",
      })
  void list_inAGrammar_isTheListOfTheServer(
      String name, String list, String pattern, String separator) throws IOException {
    Path file = Corpus.root().resolve(name);
    String expected = String.join(separator, words(list));
    String text = Files.readString(file);
    Pattern place = Pattern.compile(pattern);
    if (IS_UPDATE) {
      text =
          place.matcher(text).replaceAll(match -> Matcher.quoteReplacement(with(match, expected)));
      Files.writeString(file, text);
    }
    assertThat(place.matcher(text).results().map(match -> match.group(1)).distinct())
        .as("the %s of %s; -Dgolden.update=true writes them anew", list, name)
        .containsExactly(expected);
  }

  private static String with(MatchResult match, String list) {
    int start = match.start(1) - match.start();
    int end = match.end(1) - match.start();
    return match.group().substring(0, start) + list + match.group().substring(end);
  }

  private static Collection<String> words(String list) {
    return switch (list) {
      case "statements" -> new TreeSet<>(ReservedWords.NAMING_STATEMENTS);
      case "marks" -> new TreeSet<>(ReservedWords.NAMING_MARKS);
      case "units" ->
          Unit.spellings().stream()
              .filter(spelling -> Character.isLetter(spelling.charAt(0)))
              .toList();
      default -> List.of();
    };
  }
}
