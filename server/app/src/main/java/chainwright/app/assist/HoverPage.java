package chainwright.app.assist;

import chainwright.app.plot.AltText;
import chainwright.app.plot.Plot;
import chainwright.app.plot.PlotTheme;
import chainwright.app.plot.SvgPlot;
import chainwright.app.plot.TextPlot;
import chainwright.notation.diagnostic.Prose;
import chainwright.notation.model.Note;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Collects what a hover shows, in Markdown: the answer first, then plots, tables and notes.
 *
 * <p>Some editors show a hover of more than 100 000 characters as raw text, so a picture that would
 * make it too long is drawn in characters instead.
 */
final class HoverPage {

  private static final int MOST_CHARACTERS = 90_000;
  private static final int MOST_PER_PICTURE = 40_000;

  private final Optional<PlotTheme> picture;
  private final StringBuilder text = new StringBuilder();
  private final List<Plot> plots = new ArrayList<>();

  HoverPage(Optional<PlotTheme> picture) {
    this.picture = picture;
  }

  /** Begins with the answer: a word, and what it comes to. */
  static String answer(String word, String says) {
    return "**" + word + "**: " + says;
  }

  /** Adds a paragraph, or a list; the minus of a number is set as a minus sign. */
  HoverPage say(String markdown) {
    return add(Prose.set(markdown));
  }

  private HoverPage add(String markdown) {
    if (!markdown.isBlank()) {
      text.append(markdown.strip()).append("\n\n");
    }
    return this;
  }

  HoverPage plot(Plot plot) {
    plots.add(plot);
    String image = picture.map(theme -> image(plot, theme)).orElse("");
    boolean fits =
        image.length() <= MOST_PER_PICTURE && text.length() + image.length() <= MOST_CHARACTERS;
    if (!image.isEmpty() && fits) {
      text.append(image).append("\n\n");
    } else {
      text.append("```\n").append(TextPlot.render(plot)).append("```\n\n");
    }
    return this;
  }

  private static String image(Plot plot, PlotTheme theme) {
    String words = plain(AltText.of(plot)).replace("[", "(").replace("]", ")").replace("\n", " ");
    return "![" + words + "](" + SvgPlot.toDataUri(SvgPlot.renderLow(plot, theme)) + ")";
  }

  /** Adds a table; one without rows is left out. */
  HoverPage table(List<String> head, List<List<String>> rows) {
    if (!rows.isEmpty()) {
      row(head);
      row(head.stream().map(cell -> "---").toList());
      rows.forEach(this::row);
      text.append('\n');
    }
    return this;
  }

  private void row(List<String> cells) {
    text.append(
            cells.stream()
                .map(cell -> Prose.set(cell).replace("|", "\\|").replace("\n", " "))
                .collect(Collectors.joining(" | ", "| ", " |")))
        .append('\n');
  }

  HoverPage notes(List<Note> notes) {
    notes.forEach(
        note ->
            add(
                Arrays.stream(plain(note.text()).split("\n", -1))
                    .map(line -> "> " + line)
                    .collect(Collectors.joining("\n"))));
    return this;
  }

  HoverText over(TextSpan span) {
    return new HoverText(text.toString().stripTrailing() + "\n", span, plots);
  }

  /** Keeps an author's words from being read as HTML, or as a picture that is fetched elsewhere. */
  static String plain(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace("![", "\\![");
  }

  /** Gives the words back as they are read: the reverse of {@link #plain}, without emphasis. */
  static String unmarked(String markdown) {
    return markdown
        .replace("**", "")
        .replace("`", "")
        .replace("\\![", "![")
        .replace("&lt;", "<")
        .replace("&amp;", "&");
  }
}
