package chainwright.app.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Contrast of the themes. Source: W3C, Web Content Accessibility Guidelines 2.2, success criteria
 * 1.4.3 (text, 4.5:1) and 1.4.11 (graphics, 3:1), and its definition of relative luminance; from
 * memory.
 */
class PlotThemeTest {

  private static final double TEXT = 4.5;
  private static final double GRAPHICS = 3;
  private static final double ENHANCED = 7;

  static Stream<PlotTheme> themes() {
    return Stream.of(PlotTheme.PAPER, PlotTheme.LIGHT, PlotTheme.DARK);
  }

  static Stream<PlotTheme> contrastThemes() {
    return Stream.of(PlotTheme.CONTRAST_LIGHT, PlotTheme.CONTRAST_DARK);
  }

  /** Source: the same guidelines, success criterion 1.4.6 (text, 7:1); from memory. */
  @ParameterizedTest
  @MethodSource("contrastThemes")
  void inks_ofHighContrast_standOutMore(PlotTheme theme) {
    for (String paper : List.of(theme.ground(), theme.plate(), theme.zone(), theme.otherZone())) {
      check(theme.ink(), paper, ENHANCED);
      check(theme.quietInk(), paper, ENHANCED);
      for (CurveRole role : CurveRole.values()) {
        check(theme.ofRole(role), paper, ENHANCED);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("themes")
  void inks_onEveryPaper_standOut(PlotTheme theme) {
    List<String> papers = List.of(theme.ground(), theme.plate(), theme.zone(), theme.otherZone());
    for (String paper : papers) {
      check(theme.ink(), paper, TEXT);
      check(theme.quietInk(), paper, TEXT);
      // Curves' names stand in the curves' inks.
      for (CurveRole role : CurveRole.values()) {
        check(theme.ofRole(role), paper, role == CurveRole.COMPARISON ? GRAPHICS : TEXT);
      }
    }
  }

  @Test
  void contrast_blackOnWhite_is21() {
    assertThat(contrast("#000000", "#ffffff")).isEqualTo(21);
  }

  @Test
  void colour_withoutHash_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PlotTheme("red", "", "", "", "", "", "", "", "", "", "", "", ""))
        .withMessageContaining("`red`");
  }

  private static void check(String ink, String paper, double least) {
    assertThat(contrast(ink, paper)).as(ink + " on " + paper).isGreaterThanOrEqualTo(least);
  }

  private static double contrast(String one, String other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  private static double luminance(String colour) {
    return 0.2126 * channel(colour, 1) + 0.7152 * channel(colour, 3) + 0.0722 * channel(colour, 5);
  }

  private static double channel(String colour, int from) {
    double value = Integer.parseInt(colour.substring(from, from + 2), 16) / 255.0;
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  }
}
