package chainwright.app.assist;

import chainwright.app.plot.Plot;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what is to be drawn beside a place of a text: the line that it stands on, and the whole that
 * the line is part of. It is what a hover draws there.
 *
 * @param hovering tells of each place
 */
public record Plotting(Hovering hovering) {

  /**
   * What is to be drawn.
   *
   * @param name the name of the chain, bus or preset
   * @param parts the innermost line at the place that can be drawn, if there is one, then the whole
   */
  public record Plotted(String name, List<Part> parts) {

    /**
     * Copies the parts.
     *
     * @param name the name
     * @param parts what is drawn
     */
    public Plotted {
      parts = List.copyOf(parts);
    }
  }

  /**
   * A line, or a whole chain.
   *
   * @param says what it does, in one line of plain text
   * @param plots its plots, one or more
   */
  public record Part(String says, List<Plot> plots) {

    /**
     * Copies the plots.
     *
     * @param says what it does
     * @param plots its plots
     */
    public Part {
      plots = List.copyOf(plots);
    }
  }

  /**
   * Says what is to be drawn beside a place.
   *
   * @param definition the definition that the place is in
   * @param offset the place, from the start of the definition's section
   * @return what to draw; empty where there is no chain, bus or preset
   */
  public Optional<Plotted> at(Definition definition, int offset) {
    if (definition instanceof Definition.Track track) {
      return Optional.of(at(definition, track.section(), track.name(), offset));
    }
    return definition instanceof Definition.Preset preset
        ? Optional.of(at(definition, preset.section(), preset.name(), offset))
        : Optional.empty();
  }

  private Plotted at(Definition definition, Section section, Name name, int offset) {
    List<Part> parts = new ArrayList<>();
    List<Statement> around = around(section, offset);
    // The outermost statement is the definition itself.
    for (int i = around.size() - 1; i > 0 && parts.isEmpty(); i--) {
      around
          .get(i)
          .head()
          .map(Item.Word::span)
          .flatMap(head -> drawn(definition, head.start()))
          .ifPresent(parts::add);
    }
    drawn(definition, name.span().start()).ifPresent(parts::add);
    return new Plotted(name.text(), parts);
  }

  private Optional<Part> drawn(Definition definition, int offset) {
    return hovering
        .at(definition, offset)
        .filter(told -> !told.plots().isEmpty())
        .map(told -> new Part(told.answer(), told.plots()));
  }

  /** The statements around a place, from the outermost; those of its line where it touches none. */
  private static List<Statement> around(Section section, int offset) {
    List<Statement> around = new ArrayList<>();
    collect(Block.of(section), Math.max(offset, lineStart(section.text(), offset)), around);
    if (around.size() < 2) {
      around.clear();
      collect(Block.of(section), lineStart(section.text(), offset), around);
    }
    return around;
  }

  private static void collect(Block block, int offset, List<Statement> into) {
    Statement last = null;
    for (Block.Member member : block.members()) {
      if (member instanceof Block.Line line) {
        last = line.statement();
        if (last.span().isTouchedBy(offset)) {
          into.add(last);
          last.block().ifPresent(inner -> collect(inner, offset, into));
          return;
        }
      } else if (last != null
          && member instanceof Block.Prose prose
          && prose.span().isTouchedBy(offset)) {
        // Prose tells of the statement above it.
        into.add(last);
        return;
      }
    }
  }

  /** Where the words of a line begin. */
  private static int lineStart(String text, int offset) {
    int at = text.lastIndexOf('\n', offset - 1) + 1;
    while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\t')) {
      at++;
    }
    return at;
  }
}
