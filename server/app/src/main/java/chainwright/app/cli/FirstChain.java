package chainwright.app.cli;

import java.util.List;

/** Says of files that hold nothing yet how to begin. */
final class FirstChain {

  private FirstChain() {}

  /**
   * Looks for files about which there is nothing to report because there is nothing in them.
   *
   * @param checked the files
   * @return what to say of them, a line each; empty if every file holds something
   */
  static List<String> hint(List<CheckedFile> checked) {
    List<String> empty =
        checked.stream().filter(FirstChain::isEmpty).map(one -> "`" + one.file() + "`").toList();
    if (empty.isEmpty()) {
      return List.of();
    }
    return List.of(
        String.join(", ", empty)
            + (empty.size() == 1 ? " holds" : " hold")
            + " no chain yet. A first one:",
        "  chain voice {",
        "    source     speech",
        "    high-pass  80 Hz  12 dB/oct",
        "  }",
        "`chainwright explain` lists the stages, `chainwright demo DIR` writes a session.");
  }

  private static boolean isEmpty(CheckedFile file) {
    return file.document().file().definitions().isEmpty() && file.findings().found().isEmpty();
  }
}
