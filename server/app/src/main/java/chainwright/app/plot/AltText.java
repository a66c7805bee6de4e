package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Says a plot in one line of words, for those who cannot see it and editors that show no images.
 */
public final class AltText {

  /** The most of a row of stems that are said one by one. */
  private static final int MOST_STEMS = 8;

  private AltText() {}

  /**
   * Returns the heading, what is shown, and the words of all marks and readings, such as "High-pass
   * 80 Hz (gain): −3.0 dB at 66 Hz".
   *
   * @param plot the plot
   * @return one line; it holds the author's words as they are, so escape it for where it goes
   */
  public static String of(Plot plot) {
    Chart chart = ChartOf.plot(plot);
    List<String> readings = new ArrayList<>();
    for (Chart.Guide guide : chart.guides()) {
      readings.add(guide.name());
    }
    for (Chart.Mark mark : chart.marks()) {
      readings.add(mark.label());
    }
    for (Chart.Bar bar : chart.bars()) {
      readings.add("harmonic " + Numerals.text(bar.x(), 0) + " " + bar.label() + " dB");
    }
    for (Chart.Stem stem : chart.stems().subList(0, Math.min(MOST_STEMS, chart.stems().size()))) {
      readings.add(stem.label() + " dB after " + time(stem.x(), chart.x().unit()));
    }
    if (chart.stems().size() > MOST_STEMS) {
      readings.add("and " + (chart.stems().size() - MOST_STEMS) + " more");
    }
    for (Chart.Note note : chart.notes()) {
      readings.add(note.term() + " " + note.reading());
    }
    readings.removeIf(String::isBlank);
    String head =
        chart.title().isBlank() ? chart.caption() : chart.title() + " (" + chart.caption() + ")";
    return Lettering.oneLine(readings.isEmpty() ? head : head + ": " + String.join("; ", readings));
  }

  /** Says a time in the unit of its axis, which is otherwise in seconds. */
  private static String time(double seconds, String unit) {
    return Numerals.text(unit.equals("ms") ? seconds * 1000 : seconds, unit.equals("ms") ? 1 : 2)
        + " "
        + unit;
  }
}
