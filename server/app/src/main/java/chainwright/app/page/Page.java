package chainwright.app.page;

import java.util.List;

/**
 * A page to read, in words alone; how it is laid out is for its renderer to decide.
 *
 * @param title what it is about, such as "High-pass filter"
 * @param blocks what it says, in order
 */
public record Page(String title, List<Block> blocks) {

  /**
   * Copies the list.
   *
   * @param title what it is about
   * @param blocks what it says
   */
  public Page {
    blocks = List.copyOf(blocks);
  }
}
