package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.assist.Rewrite;
import chainwright.app.assist.UsualOrder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Putting stages into their usual order brings no finding that was not there before. */
class UsualOrderLawTest {

  private static final SectionReader READER = new SectionReader(Catalogue.load());
  private static final Judgements JUDGEMENTS = new Judgements(READER.catalogue(), READER.spread());

  @TestFactory
  Stream<DynamicTest> usualOrder_ofAnExample_bringsNoFinding() {
    return ChainFiles.under(
            List.of(
                Path.of("../../grammar"),
                Path.of("../engine/src/main/resources/chainwright/rules")))
        .stream()
        .sorted()
        .map(
            path ->
                DynamicTest.dynamicTest(
                    path.toString(), () -> check(path, Files.readString(path))));
  }

  private static void check(Path path, String text) {
    DocumentSnapshot document =
        DocumentSnapshot.ofDisk(DocumentPath.ofFile(path.toAbsolutePath()), text, READER);
    FindingDump before = judge(document);
    for (Definition definition : document.file().definitions()) {
      Optional<Rewrite> rewrite = UsualOrder.of(definition);
      if (rewrite.isPresent()) {
        String changed =
            before.apply(
                new Fix("Sort", Fix.Effect.CHANGES_THE_SOUND, false, rewrite.get().edits()));
        FindingDump after = judge(DocumentSnapshot.ofDisk(document.path(), changed, READER));
        assertThat(codes(after)).as("%s%n%s", changed, after).isSubsetOf(codes(before));
      }
    }
  }

  private static List<String> codes(FindingDump judged) {
    List<String> codes = new ArrayList<>();
    for (Finding finding : judged.findings()) {
      codes.add(finding.code());
    }
    return codes;
  }

  private static FindingDump judge(DocumentSnapshot document) {
    return FindingDump.of(document, Workspace.ofFolders(List.of(), READER), JUDGEMENTS);
  }
}
