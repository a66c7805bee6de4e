package chainwright.app.lsp;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.PositionEncoding;
import chainwright.app.workspace.Positions;
import chainwright.app.workspace.TextPosition;
import chainwright.app.workspace.Workspace;
import chainwright.notation.syntax.Spread;
import chainwright.notation.text.TextSpan;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;

/**
 * What a handler works on: the state of everything at the moment the request came.
 *
 * @param document the document asked about
 * @param workspace all documents
 * @param client what the editor can do
 * @param settings what the user has set
 * @param judgements what was found in each document last
 * @param spread how many parts of a document are worked on
 * @param cancel throws when the answer is no longer wanted; long work asks it now and then
 */
record Request(
    DocumentSnapshot document,
    Workspace workspace,
    ClientTraits client,
    ClientSettings settings,
    Judgements judgements,
    Spread spread,
    CancelChecker cancel) {

  /**
   * Answers one kind of request.
   *
   * @param <P> what is asked
   * @param <R> what is answered
   */
  @FunctionalInterface
  interface Handler<P, R> {
    R answer(P params, Request request);
  }

  Findings findings() {
    return Findings.of(document, workspace, judgements);
  }

  int offsetOf(Position position) {
    return document
        .positions(client.encoding())
        .offsetOf(new TextPosition(position.getLine(), position.getCharacter()));
  }

  Range rangeOf(TextSpan span) {
    return rangeOf(document, span);
  }

  Range rangeOf(DocumentSnapshot in, TextSpan span) {
    return rangeOf(in, span, client.encoding());
  }

  static Range rangeOf(DocumentSnapshot in, TextSpan span, PositionEncoding encoding) {
    Positions positions = in.positions(encoding);
    return new Range(
        position(positions.positionOf(span.start())), position(positions.positionOf(span.end())));
  }

  private static Position position(TextPosition place) {
    return new Position(place.line(), place.character());
  }
}
