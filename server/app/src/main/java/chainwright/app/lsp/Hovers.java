package chainwright.app.lsp;

import chainwright.app.assist.Hovering;
import chainwright.app.plot.PlotTheme;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.project.SourceFile;
import java.util.Optional;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;

/** Answers what stands under the pointer. */
final class Hovers {

  private Hovers() {}

  static Optional<Hover> answer(HoverParams params, Request request) {
    int offset = request.offsetOf(params.getPosition());
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    int start = file.tree().startOf(index);
    Hovering hovering =
        new Hovering(
            request.workspace().projectOf(request.document()).scope(file.key()),
            Catalogue.load(),
            picture(request));
    return hovering
        .at(
            file.sections().get(index),
            request.findings().found().stream().map(found -> found.finding()).toList(),
            offset - start)
        .map(
            found ->
                new Hover(
                    new MarkupContent(MarkupKind.MARKDOWN, found.markdown()),
                    request.rangeOf(found.span().plus(start))));
  }

  private static Optional<PlotTheme> picture(Request request) {
    boolean isPicture =
        switch (request.settings().plots()) {
          case SVG -> true;
          case TEXT -> false;
          case AUTO -> request.client().drawsImages();
        };
    if (!isPicture) {
      return Optional.empty();
    }
    return Optional.of(request.settings().plotTheme().paints());
  }
}
