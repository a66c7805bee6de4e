package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DocumentsTest {

  private static final String URI = "file:///r/a.chain";

  private final SectionReader reader = new SectionReader(Catalogue.load());
  private final Documents documents = new Documents(reader);

  @TempDir Path folder;

  /** The editor's side is a plain string, edited by offsets alone. */
  @ParameterizedTest
  @EnumSource(PositionEncoding.class)
  void change_randomEdits_keepsInStepWithTheEditor(PositionEncoding encoding) {
    Random random = new Random(20261125);
    String[] pieces = {"bell 3 kHz", "\n", "\r\n", "\ud83c\udf99", "é", "{", "}", "", "chain a "};
    StringBuilder editor = new StringBuilder("chain a {\n}\n");
    documents.open(URI, 0, editor.toString());
    for (int version = 1; version <= 300; version++) {
      List<TextChange> changes = new ArrayList<>();
      for (int i = random.nextInt(4); i >= 0; i--) {
        Positions positions =
            DocumentSnapshot.ofEditor(URI, 0, editor.toString(), reader).positions(encoding);
        int start = characterStart(editor, random.nextInt(editor.length() + 1));
        int end = characterStart(editor, Math.min(editor.length(), start + random.nextInt(6)));
        String piece = pieces[random.nextInt(pieces.length)];
        changes.add(TextChange.of(positions.positionOf(start), positions.positionOf(end), piece));
        editor.replace(start, end, piece);
      }
      DocumentSnapshot after = documents.change(URI, version, changes, encoding).orElseThrow();
      assertThat(after.text()).as("version %d", version).isEqualTo(editor.toString());
      assertThat(after.version()).contains(version);
    }
  }

  /** An editor never names a place inside a character or between CR and LF. */
  private static int characterStart(StringBuilder text, int offset) {
    boolean isInside =
        offset > 0
            && offset < text.length()
            && (Character.isLowSurrogate(text.charAt(offset))
                || (text.charAt(offset) == '\n' && text.charAt(offset - 1) == '\r'));
    return isInside ? offset - 1 : offset;
  }

  @Test
  void workspace_editAfterwards_staysAsItWas() {
    documents.open(URI, 1, "chain a { }");
    Workspace workspace = documents.workspace();
    documents.change(URI, 2, List.of(TextChange.ofWhole("chain b { }")), PositionEncoding.UTF_16);
    assertThat(text(workspace, DocumentPath.ofUri(URI))).isEqualTo("chain a { }");
    assertThat(text(documents.workspace(), DocumentPath.ofUri(URI))).isEqualTo("chain b { }");
  }

  @Test
  void document_openAndOnDisk_isTheOpenOne() throws IOException {
    DocumentPath path = write("a.chain", "chain disk { }");
    documents.open(path.toUri(), 1, "chain open { }");
    assertThat(text(documents.workspace(), path)).isEqualTo("chain open { }");
    documents.close(path.toUri());
    assertThat(text(documents.workspace(), path)).isEqualTo("chain disk { }");
  }

  @Test
  void document_changedOnDisk_isReadAgainAndKeepsWhatIsTheSame() throws IOException {
    DocumentPath path = write("a.chain", "chain a { }\nchain b { }\n");
    DocumentSnapshot before = documents.workspace().document(path).orElseThrow();
    assertThat(documents.workspace().document(path)).containsSame(before);
    write("a.chain", "chain a { }\nchain bb { }\n");
    DocumentSnapshot after = documents.workspace().document(path).orElseThrow();
    assertThat(after.text()).isEqualTo("chain a { }\nchain bb { }\n");
    assertThat(after.tree().sections().get(0)).isSameAs(before.tree().sections().get(0));
    Files.delete(folder.resolve("a.chain"));
    assertThat(documents.workspace().document(path)).isEmpty();
  }

  @Test
  void reachableFrom_importsInARing_eachOnce() throws IOException {
    DocumentPath a = write("a.chain", "import \"lib/b.chain\"\nimport \"gone.chain\"\n");
    DocumentPath b = write("lib/b.chain", "import \"../c.chain\"\n");
    DocumentPath c = write("c.chain", "import \"a.chain\"\n");
    Workspace workspace = documents.workspace();
    assertThat(workspace.reachableFrom(workspace.document(a).orElseThrow()))
        .extracting(DocumentSnapshot::path)
        .containsExactly(b, c);
  }

  @Test
  void documents_underFolders_leavesOutHiddenAndBuilt() throws IOException {
    DocumentPath a = write("a.chain", "");
    DocumentPath b = write("lib/b.chain", "");
    write(".hidden/c.chain", "");
    write("target/d.chain", "");
    write("node_modules/e.chain", "");
    write("f.txt", "");
    documents.setFolders(List.of(folder, folder.resolve("gone")));
    assertThat(documents.workspace().documents())
        .extracting(DocumentSnapshot::path)
        .containsExactlyInAnyOrder(a, b);
  }

  private DocumentPath write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    return DocumentPath.ofFile(file);
  }

  private static String text(Workspace workspace, DocumentPath path) {
    return workspace.document(path).orElseThrow().text();
  }
}
