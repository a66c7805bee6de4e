package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NearbyFilesTest {

  private static final SectionReader READER = new SectionReader(Catalogue.load());

  @TempDir private Path folder;

  @Test
  void recordings_ofAFolder_areFoldersThenFilesByName() throws IOException {
    write("b.WAV", "a.flac", "c.txt", ".d.wav", "takes/e.wav", ".git/f.wav");
    assertThat(names("")).containsExactly("takes", "a.flac", "b.WAV");
    assertThat(names("takes/")).containsExactly("e.wav");
    assertThat(names("takes/../takes/")).containsExactly("e.wav");
  }

  @Test
  void recordings_whereNothingCanBeRead_areNone() throws IOException {
    write("a.wav");
    assertThat(names("absent/")).isEmpty();
    assertThat(names("a.wav/")).isEmpty();
  }

  @Test
  void recordings_thatAQuoteCannotHold_areLeftOut() throws IOException {
    write("plain.wav", "with \"quotes\".wav");
    assertThat(names("")).containsExactly("plain.wav");
  }

  @Test
  void recordings_tooMany_areCutAndSaidToBe() throws IOException {
    for (int i = 0; i < 250; i++) {
      write("take-" + i + ".wav");
    }
    NearbyFiles.Listing listing = nearby().recordings("");
    assertThat(listing.entries()).hasSize(200);
    assertThat(listing.isWhole()).isFalse();
  }

  private List<String> names(String path) {
    return nearby().recordings(path).entries().stream().map(NearbyFiles.Entry::name).toList();
  }

  private NearbyFiles nearby() {
    DocumentPath path = DocumentPath.ofFile(folder.resolve("here.chain"));
    return new NearbyFiles(
        DocumentSnapshot.ofDisk(path, "", READER), Workspace.ofFolders(List.of(), READER));
  }

  private void write(String... names) throws IOException {
    for (String name : names) {
      Files.createDirectories(folder.resolve(name).getParent());
      Files.writeString(folder.resolve(name), "");
    }
  }
}
