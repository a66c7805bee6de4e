package chainwright.app.plot;

import java.util.List;

/**
 * A plot in the terms of drawing, alike for all kinds: two axes and what lies between them.
 *
 * @param title the heading
 * @param caption what is shown, in a few words
 * @param x the horizontal axis
 * @param y the vertical axis
 * @param square whether both axes share one scale, so that equal levels lie on the diagonal
 * @param baseline the height that means "nothing done", or NaN for none
 * @param level a height worth a line across, or NaN for none
 * @param bands tinted parts of the horizontal axis
 * @param guides vertical lines with a name
 * @param curves the lines
 * @param marks points with a word
 * @param bars bars from the low end of the vertical axis
 * @param stems thin lines from the low end of the vertical axis
 * @param notes readings set beside or below
 */
record Chart(
    String title,
    String caption,
    Axis x,
    Axis y,
    boolean square,
    double baseline,
    double level,
    List<Band> bands,
    List<Guide> guides,
    List<Curve> curves,
    List<Mark> marks,
    List<Bar> bars,
    List<Stem> stems,
    List<Note> notes) {

  /** A named part of the horizontal axis. */
  record Band(double low, double high, String name) {}

  /** A vertical line with a name. */
  record Guide(double at, String name) {}

  /** A point with a word. */
  record Mark(double x, double y, String label) {}

  /** A bar with its reading on top; even ones are drawn hollow. */
  record Bar(double x, double top, String label, boolean even) {}

  /** A thin line from below with a head; its label is written where there is room. */
  record Stem(double x, double top, String label) {}

  /** A reading: what it is, and the number. */
  record Note(String term, String reading) {}
}
