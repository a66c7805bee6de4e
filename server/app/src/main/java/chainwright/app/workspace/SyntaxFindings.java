package chainwright.app.workspace;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxTree;
import java.util.ArrayList;
import java.util.List;

/** What the parser could not understand, as findings. */
public final class SyntaxFindings {

  private SyntaxFindings() {}

  /**
   * Returns the findings of a tree.
   *
   * @param tree the tree
   * @return the findings, in the order of the text
   */
  public static List<Finding> of(SyntaxTree tree) {
    List<Finding> findings = new ArrayList<>();
    for (Section section : tree.sections()) {
      for (Section.Trouble trouble : section.troubles()) {
        List<Fix> fixes =
            trouble.mend().stream()
                .map(
                    edit ->
                        new Fix(
                            trouble.remedy(),
                            Fix.Effect.KEEPS_THE_SOUND,
                            true,
                            List.of(new PlacedEdit(section, edit))))
                .toList();
        findings.add(
            Finding.ofText(
                trouble.code(),
                Severity.ERROR,
                new Place(section, trouble.span()),
                trouble.what(),
                "",
                trouble.remedy(),
                fixes));
      }
    }
    return findings;
  }
}
