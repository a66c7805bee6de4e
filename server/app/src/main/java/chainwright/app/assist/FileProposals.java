package chainwright.app.assist;

import chainwright.app.workspace.NearbyFiles;
import java.util.List;

/**
 * Proposes the files and folders that a path could go on with.
 *
 * @param nearby finds them
 * @param line the line
 */
record FileProposals(NearbyFiles nearby, WrittenLine line) {

  /** The recordings that can be a take. */
  Completing.Answer recordings() {
    return answer(nearby.recordings(folder()));
  }

  /** The files of chains that can be imported. */
  Completing.Answer chains() {
    return answer(nearby.chains(folder()));
  }

  /** What is typed of the path up to its last slash. */
  private String folder() {
    String typed = line.isQuoted() ? line.prefix() : "";
    return typed.substring(0, typed.lastIndexOf('/') + 1);
  }

  private Completing.Answer answer(NearbyFiles.Listing listing) {
    List<Proposal> proposals = listing.entries().stream().map(this::proposal).toList();
    return new Completing.Answer(proposals, listing.isWhole());
  }

  /** In quotes the path alone, with the closing quote if it is missing; else in quotes. */
  private Proposal proposal(NearbyFiles.Entry entry) {
    String path = folder() + entry.name() + (entry.isFolder() ? "/" : "");
    String closing = entry.isFolder() || (line.isQuoted() && !line.isOpenQuote()) ? "" : "\"";
    String opening = line.isQuoted() ? "" : "\"";
    return Proposal.of(
            opening + path + closing,
            entry.isFolder() ? Proposal.Kind.FOLDER : Proposal.Kind.FILE,
            entry.isFolder() ? "folder" : "file")
        .withFilter(line.isQuoted() ? path : line.prefix().isEmpty() ? opening + path : path);
  }
}
