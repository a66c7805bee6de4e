package chainwright.app.view;

import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.model.Clauses;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A line of a chain that does something: a stage, a preset that is applied, a structure, or one of
 * the ways through a structure.
 *
 * @param number its place, counted as in the file: "3" for the third line of the chain, "3.2" for
 *     the second inside it
 * @param words how it is called, such as "high-pass" or "apply rumble-guard"
 * @param clauses its label, its notes and the rules it breaks on purpose
 * @param isBypassed whether it is out of the path
 * @param stage the stage; empty for anything that holds stages
 * @param response what it does to each frequency by itself
 * @param soFar what the chain does up to and with it; empty where only a part of the signal passes
 * @param parts what it holds, in the order of the text
 * @param elements what it is in the path: one element, for a preset all that it brings; empty for a
 *     way through a structure and a side chain, which are part of an element
 */
public record Part(
    String number,
    String words,
    Clauses clauses,
    boolean isBypassed,
    Optional<StageElement> stage,
    Response response,
    Optional<Response> soFar,
    List<Part> parts,
    List<PathElement> elements) {

  /**
   * Copies the lists.
   *
   * @param number its place
   * @param words how it is called
   * @param clauses what is said of it
   * @param isBypassed whether it is out of the path
   * @param stage the stage
   * @param response what it does
   * @param soFar what the chain does up to it
   * @param parts what it holds
   * @param elements what it is in the path
   */
  public Part {
    parts = List.copyOf(parts);
    elements = List.copyOf(elements);
  }

  /**
   * Returns its label.
   *
   * @return the word after {@code as}, or empty
   */
  public Optional<String> label() {
    return clauses.label().map(label -> label.text());
  }

  /**
   * Returns how far inside it stands.
   *
   * @return 0 for a line of the chain itself
   */
  public int depth() {
    return (int) number.chars().filter(one -> one == '.').count();
  }

  /**
   * Returns it and all that it holds.
   *
   * @return the parts, in the order of the text
   */
  public Stream<Part> all() {
    return Stream.concat(Stream.of(this), parts.stream().flatMap(Part::all));
  }
}
