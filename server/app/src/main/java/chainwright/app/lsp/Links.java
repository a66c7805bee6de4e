package chainwright.app.lsp;

import chainwright.app.assist.FileLinks;
import chainwright.app.workspace.DocumentPath;
import java.nio.file.Files;
import java.util.List;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;

/**
 * {@code textDocument/documentLink}: imports and takes. What is not there has no target, so that no
 * editor opens an empty file in its place.
 */
final class Links {

  private Links() {}

  static List<DocumentLink> answer(DocumentLinkParams params, Request request) {
    return FileLinks.of(request.document().file(), key -> exists(key, request)).stream()
        .map(link -> link(link, request))
        .toList();
  }

  private static DocumentLink link(FileLinks.Link link, Request request) {
    DocumentLink made = new DocumentLink(request.rangeOf(link.span()));
    made.setTooltip(link.says());
    if (link.exists()) {
      made.setTarget(DocumentPath.ofKey(link.key()).toUri());
    }
    return made;
  }

  private static boolean exists(String key, Request request) {
    DocumentPath path = DocumentPath.ofKey(key);
    return request.workspace().isOpen(path) || path.file().filter(Files::isRegularFile).isPresent();
  }
}
