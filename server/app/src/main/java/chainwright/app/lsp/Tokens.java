package chainwright.app.lsp;

import chainwright.app.workspace.DocumentPath;
import chainwright.notation.syntax.Classification;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokenModifiers;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensDelta;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensEdit;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/**
 * {@code textDocument/semanticTokens}: what each word is. It remembers the last answer for each
 * document, so that after an edit only the difference is sent.
 */
final class Tokens {

  static final List<String> TYPES =
      Arrays.stream(Classification.TokenClass.values()).map(Tokens::type).distinct().toList();

  static final List<String> MODIFIERS = List.of(SemanticTokenModifiers.Documentation);

  /** How many numbers stand for one token. */
  private static final int WIDTH = 5;

  private record Sent(String name, List<Integer> data) {}

  private final Map<DocumentPath, Sent> lastSent = new ConcurrentHashMap<>();
  private final AtomicLong answers = new AtomicLong();

  SemanticTokens answer(SemanticTokensParams params, Request request) {
    Sent now = remember(request);
    return new SemanticTokens(now.name(), now.data());
  }

  Either<SemanticTokens, SemanticTokensDelta> answerDelta(
      SemanticTokensDeltaParams params, Request request) {
    Sent before = lastSent.get(request.document().path());
    Sent now = remember(request);
    if (before == null || !before.name().equals(params.getPreviousResultId())) {
      return Either.forLeft(new SemanticTokens(now.name(), now.data()));
    }
    return Either.forRight(
        new SemanticTokensDelta(difference(before.data(), now.data()), now.name()));
  }

  static SemanticTokens answerRange(SemanticTokensRangeParams params, Request request) {
    int start = request.offsetOf(params.getRange().getStart());
    int end = request.offsetOf(params.getRange().getEnd());
    return new SemanticTokens(
        data(request, new TextSpan(Math.min(start, end), Math.max(start, end))));
  }

  void forget(DocumentPath path) {
    lastSent.remove(path);
  }

  private Sent remember(Request request) {
    List<Integer> data = data(request, new TextSpan(0, request.document().text().length()));
    Sent now = new Sent(Long.toString(answers.incrementAndGet()), data);
    lastSent.put(request.document().path(), now);
    return now;
  }

  private static List<Integer> data(Request request, TextSpan wanted) {
    SyntaxTree tree = request.document().tree();
    List<Integer> data = new ArrayList<>();
    int line = 0;
    int character = 0;
    int last = tree.sectionAt(wanted.end());
    for (int i = tree.sectionAt(wanted.start()); i <= last; i++) {
      request.cancel().checkCanceled();
      Section section = tree.sections().get(i);
      for (Classification.Entry entry : Classification.of(section)) {
        TextSpan span = entry.span().plus(tree.startOf(i));
        if (span.isTouching(wanted)) {
          Range range = request.rangeOf(span);
          int startLine = range.getStart().getLine();
          int startCharacter = range.getStart().getCharacter();
          data.add(startLine - line);
          data.add(startLine == line ? startCharacter - character : startCharacter);
          // No token goes beyond its line.
          data.add(range.getEnd().getCharacter() - startCharacter);
          data.add(TYPES.indexOf(type(entry.tokenClass())));
          data.add(entry.tokenClass() == Classification.TokenClass.NOTE ? 1 : 0);
          line = startLine;
          character = startCharacter;
        }
      }
    }
    return data;
  }

  /** One edit from the first token that differs to the last. */
  private static List<SemanticTokensEdit> difference(List<Integer> before, List<Integer> now) {
    int shorter = Math.min(before.size(), now.size());
    int front = 0;
    while (front < shorter && before.get(front).equals(now.get(front))) {
      front++;
    }
    if (front == before.size() && front == now.size()) {
      return List.of();
    }
    front -= front % WIDTH;
    int back = 0;
    while (back < shorter - front
        && before.get(before.size() - 1 - back).equals(now.get(now.size() - 1 - back))) {
      back++;
    }
    back -= back % WIDTH;
    return List.of(
        new SemanticTokensEdit(
            front,
            before.size() - back - front,
            List.copyOf(now.subList(front, now.size() - back))));
  }

  private static String type(Classification.TokenClass tokenClass) {
    return switch (tokenClass) {
      case STATEMENT -> SemanticTokenTypes.Keyword;
      case SETTING -> SemanticTokenTypes.Property;
      case NAME -> SemanticTokenTypes.Variable;
      case NUMBER -> SemanticTokenTypes.Number;
      case UNIT -> SemanticTokenTypes.Type;
      case STRING -> SemanticTokenTypes.String;
      case NOTE, COMMENT -> SemanticTokenTypes.Comment;
      case PUNCTUATION -> SemanticTokenTypes.Operator;
    };
  }
}
