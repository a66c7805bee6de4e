package chainwright.app.assist;

import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.NearbyFiles;
import chainwright.app.workspace.Workspace;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A caret in a text, and what is proposed there.
 *
 * @param document the text
 * @param line what is known of the caret's line
 * @param start where the caret's section begins
 * @param answer the proposals
 */
record Caret(
    DocumentSnapshot document, Optional<WrittenLine> line, int start, Completing.Answer answer) {

  private static final SectionReader READER = new SectionReader(Catalogue.load());

  /** A text whose caret is marked by {@code |}, in a folder without files. */
  static Caret in(String marked) {
    return in(Path.of("/nowhere/a.chain"), marked.replace("|", ""), marked.indexOf('|'));
  }

  static Caret in(Path file, String text, int caret) {
    Workspace workspace = Workspace.ofFolders(List.of(), READER);
    DocumentSnapshot document = DocumentSnapshot.ofDisk(DocumentPath.ofFile(file), text, READER);
    int index = document.tree().sectionAt(caret);
    int start = document.tree().startOf(index);
    Optional<WrittenLine> line =
        WrittenLine.of(document.tree().sections().get(index), caret - start);
    Completing completing =
        new Completing(
            Catalogue.load(),
            workspace.projectOf(document).scope(document.file().key()),
            new NearbyFiles(document, workspace),
            document.file().sections().get(index).definition(),
            Set.of());
    Completing.Answer answer =
        line.map(completing::at).orElse(new Completing.Answer(List.of(), true));
    return new Caret(document, line, start, answer);
  }

  List<String> texts() {
    return answer.proposals().stream().map(Proposal::text).toList();
  }

  /** The text after a proposal is taken, as an editor without snippets writes it. */
  String after(Proposal proposal) {
    WrittenLine at = line.orElseThrow();
    String text = document.text();
    return text.substring(0, start + at.typed().start())
        + proposal.text()
        + at.tail()
        + text.substring(start + at.wordEnd());
  }
}
