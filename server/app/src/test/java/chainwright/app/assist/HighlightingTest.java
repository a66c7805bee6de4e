package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks are explained at {@link MarkedFiles}. */
class HighlightingTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain *lead* { to m }~bus m { }~chain b { spill [le|ad] }~",
        "@a~import \"p\"~chain x { apply [gu|ard] }~chain y { apply [guard] }~"
            + "@p~preset guard { gain 1 dB }~",
        "chain x { group [dr|ums] }~chain y { group [drums] }~",
        "chain a [{]|~  gain 1 dB~[}]~",
        "chain a {~  parallel [{]~    path \"x\" { gain 1 dB }~  [|}]~}~",
        "chain b { }~chain a [|{]~  gain 1 dB~",
        "chain a {~  gain |1 dB~}~",
      })
  void place_ofTheCaret_highlightsWhatIsMarked(String marked) {
    MarkedFiles files = MarkedFiles.of(marked);
    List<String> marks =
        Highlighting.at(new Names(files.project()), files.at(), files.caret()).stream()
            .map(
                mark ->
                    (mark.kind() == Highlighting.Kind.DEFINITION ? "*" : "")
                        + files.at().key()
                        + ":"
                        + mark.span().start()
                        + "-"
                        + mark.span().end())
            .toList();
    assertThat(marks).containsExactlyElementsOf(files.marks());
  }
}
