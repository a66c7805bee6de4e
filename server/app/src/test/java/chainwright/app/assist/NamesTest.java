package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.project.SourceFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks are explained at {@link MarkedFiles}. */
class NamesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain *le|ad* { to mix }~bus mix { }~chain b { spill [lead] }~",
        "chain lead { to [m|ix] }~bus *mix* { }~chain b { send [mix] -12 dB }~",
        "preset *guard* { high-pass 60 Hz }~chain a { apply [|guard] }~",
        "chain *kick* { }~chain a { gate threshold -40 dBFS key [kick|] }~",
        // A preset and a chain of one name are two things.
        "preset *glue* { gain 1 dB }~chain glue { apply [gl|ue] }~",
        // A kind of source is no name of the author's, unless a chain bears it.
        "chain a { spill |bass }~chain b { spill bass }~",
        "chain *bass* { }~chain b { spill [ba|ss] }~",
        // Another file's chain of the same name is another chain.
        "@a~chain *le|ad* { }~chain x { spill [lead] }~@b~chain lead { }~chain y { spill lead }~",
        "@a~import \"p\"~chain x { apply [gu|ard] }~@p~preset *guard* { gain 1 dB }~"
            + "@b~import \"p\"~chain y { apply [guard] }~"
            + "@c~preset guard { gain 1 dB }~chain z { apply guard }~",
        // The first of two definitions holds; nothing uses the second.
        "chain *lead* { }~chain lead { }~chain x { spill [le|ad] }~",
        "chain lead { }~chain *le|ad* { }~chain x { spill lead }~",
        // A name that nobody gives is still used.
        "@a~chain x { to [m|ix] }~chain y { to [mix] }~@b~chain z { to mix }~",
        // Microphones are a group where some file sees them together.
        "@a~import \"b\"~chain x { group *dr|ums* }~@b~chain y { group [drums] }~"
            + "@c~chain z { group drums }~",
        "@a~chain x { group *dr|ums* }~@b~chain y { group [drums] }~"
            + "@c~import \"a\"~import \"b\"~",
        "@a~import \"p\"~chain x { group *dr|ums* }~@b~import \"p\"~chain y { group drums }~"
            + "@p~preset guard { gain 1 dB }~",
        // Labels belong to their chain; its notes may speak of them.
        "chain a { gain 1 dB as *ma|tch* }~chain b { gain 1 dB as match }~",
        "chain a {~  gain 1 dB as *match*~    > So that `[ma|tch]` can be heard, and match.~}~",
        "chain a {~  parallel {~    path \"x\" { gain 1 dB as *match* }~    > See `[|match]`.~  }~}~",
        "chain a {~  gate threshold -40 dBFS {~    side-chain { high-pass 60 Hz as *he|ar* }~  }~}~",
        "chain a { high-pass 6|6 Hz }~",
      })
  void name_underTheCaret_isGivenAndUsedWhereMarked(String marked) {
    MarkedFiles files = MarkedFiles.of(marked);
    Names names = new Names(files.project());
    Optional<Names.Found> found = names.at(files.at(), files.caret());
    List<String> marks = new ArrayList<>();
    found.flatMap(names::definition).ifPresent(place -> marks.add("*" + shown(place, files)));
    found.map(names::uses).orElse(List.of()).forEach(place -> marks.add(shown(place, files)));
    assertThat(marks).containsExactlyInAnyOrderElementsOf(files.marks());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "chain le|ad { }~chain *kick* { }~; kick; yes",
        "chain le|ad { }~preset kick { gain 1 dB }~; kick; no",
        "chain le|ad { }~; lead; no",
        "@a~chain le|ad { }~@b~import \"a\"~chain kick { }~; kick; yes",
        "@a~chain le|ad { }~@b~chain kick { }~; kick; no",
        "chain a { gain 1 dB as ma|tch~ gain 2 dB as glue }~; glue; yes",
        "chain a { gain 1 dB as ma|tch }~chain b { gain 2 dB as glue }~; glue; no",
        "chain a { group dr|ums }~chain b { group toms }~; toms; yes",
      })
  void newName_thatIsTakenWhereItWouldBeSeen_isFound(String marked, String newName, String taken) {
    MarkedFiles files = MarkedFiles.of(marked);
    Names names = new Names(files.project());
    Names.Found found = names.at(files.at(), files.caret()).orElseThrow();
    assertThat(names.bearer(found, newName).isPresent()).isEqualTo(taken.equals("yes"));
  }

  private static String shown(Place place, MarkedFiles files) {
    for (SourceFile file : files.project().files()) {
      for (int i = 0; i < file.sections().size(); i++) {
        if (file.sections().get(i).section() == place.section()) {
          int start = file.tree().startOf(i);
          return file.key()
              + ":"
              + (place.span().start() + start)
              + "-"
              + (place.span().end() + start);
        }
      }
    }
    throw new AssertionError("a place in no file");
  }
}
