package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Says a plot in one line of words, for those who cannot see it and editors that show no images.
 */
public final class AltText {

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
    for (Chart.Note note : chart.notes()) {
      readings.add(note.term() + " " + note.reading());
    }
    readings.removeIf(String::isBlank);
    String head =
        chart.title().isBlank() ? chart.caption() : chart.title() + " (" + chart.caption() + ")";
    return Lettering.oneLine(readings.isEmpty() ? head : head + ": " + String.join("; ", readings));
  }
}
