package chainwright.notation.model;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.syntax.Section;
import java.util.List;
import java.util.Optional;

/**
 * What one section says, and what is wrong with it by itself.
 *
 * @param section the section
 * @param definition what it defines; empty for a section of comments or one without a name
 * @param findings what is wrong, in the order of the text; the parser's troubles are among them
 */
public record Lowered(Section section, Optional<Definition> definition, List<Finding> findings) {

  /**
   * Copies the findings.
   *
   * @param section the section
   * @param definition what it defines
   * @param findings what is wrong
   */
  public Lowered {
    findings = List.copyOf(findings);
  }
}
