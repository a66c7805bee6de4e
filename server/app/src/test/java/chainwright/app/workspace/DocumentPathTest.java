package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** URIs after RFC 3986 and RFC 8089 (file URIs), in the spellings that editors send. */
class DocumentPathTest {

  @ParameterizedTest
  @CsvSource({
    "file:///home/ana/a.chain,             /home/ana/a.chain",
    "file:/home/ana/a.chain,               /home/ana/a.chain",
    "file://localhost/home/ana/a.chain,    /home/ana/a.chain",
    "FILE:///home/ana/a.chain,             /home/ana/a.chain",
    "file:///home/ana/./x/../a.chain,      /home/ana/a.chain",
    "file:///home//ana/a.chain,            /home/ana/a.chain",
    "file:///ferry%20night/a%C3%A9.chain,  /ferry night/aé.chain",
    "file:///c:/takes/a.chain,             /c:/takes/a.chain",
    "file:///C:/takes/a.chain,             /c:/takes/a.chain",
    "file:///c%3A/takes/a.chain,           /c:/takes/a.chain",
    "file:///C%3a/takes/a.chain,           /c:/takes/a.chain",
    "file://Desk/takes/a.chain,            //desk/takes/a.chain",
    "file:///100%/a.chain,                 /100%/a.chain",
    "file:///100%2/a.chain,                /100%2/a.chain",
    "untitled:Untitled-1,                  untitled:Untitled-1",
  })
  void ofUri_anySpelling_isOnePath(String uri, String key) {
    assertThat(DocumentPath.ofUri(uri).key()).isEqualTo(key);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/home/ana/a.chain",
        "/ferry night/aé 🎙 #1?.chain",
        "/100%/a.chain",
        "/c:/takes/a.chain",
        "//desk/takes/a.chain",
        "untitled:Untitled-1"
      })
  void toUri_anyPath_isReadBack(String key) {
    DocumentPath path = new DocumentPath(key);
    assertThat(DocumentPath.ofUri(path.toUri())).isEqualTo(path);
    assertThat(path.toUri()).matches("[!-~]+");
  }

  @ParameterizedTest
  @CsvSource({
    "/r/s/b.chain,        /r/s/b.chain",
    "/r/s/../../../b.chain, /b.chain",
    "C:/s/b.chain,        /c:/s/b.chain",
    "//desk/s/b.chain,    //desk/s/b.chain",
    "untitled:b.chain,    untitled:b.chain",
  })
  void ofKey_keyOfAnImport_isThatFile(String key, String expected) {
    assertThat(DocumentPath.ofKey(key).key()).isEqualTo(expected);
  }

  @Test
  void file_ofThisMachine_isReadBack() {
    Path file = Path.of("takes", "a b.chain").toAbsolutePath();
    assertThat(DocumentPath.ofFile(file).file()).contains(file);
    assertThat(DocumentPath.ofUri(file.toUri().toString())).isEqualTo(DocumentPath.ofFile(file));
  }

  @Test
  void file_noFile_isEmpty() {
    assertThat(DocumentPath.ofUri("untitled:Untitled-1").file()).isEmpty();
  }
}
