package chainwright.notation.diagnostic;

import java.util.List;

/**
 * A way to mend a finding by editing the text.
 *
 * @param title what it does, as an order: "Move `de-ess` before `compressor`"
 * @param effect what it does to the sound
 * @param isPreferred whether it is the one that most people would choose
 * @param edits the edits, which do not overlap; not empty
 */
public record Fix(String title, Effect effect, boolean isPreferred, List<PlacedEdit> edits) {

  /** What applying a fix does to the sound. */
  public enum Effect {
    /** The chain sounds as before: spelling, layout, an unused word. */
    KEEPS_THE_SOUND("keeps the sound"),
    /** The chain sounds different. */
    CHANGES_THE_SOUND("changes the sound"),
    /** What is written could not be read and was left out; from then on it is part of the sound. */
    GIVES_A_MEANING("can be read then");

    private final String words;

    Effect(String words) {
      this.words = words;
    }

    /**
     * Says it in words that follow the title in brackets.
     *
     * @return such as "keeps the sound"
     */
    public String inWords() {
      return words;
    }
  }

  /**
   * Copies the edits, and sets the title: a minus sign outside of backticks.
   *
   * @param title what it does
   * @param effect what it does to the sound
   * @param isPreferred whether it is the usual choice
   * @param edits the edits
   * @throws IllegalArgumentException if there is no edit
   */
  public Fix {
    title = Prose.sentence(title);
    edits = List.copyOf(edits);
    if (edits.isEmpty()) {
      throw new IllegalArgumentException("a fix must hold an edit, but `" + title + "` has none");
    }
  }
}
