package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.notation.lowering.Vocabulary;
import java.util.List;

/** What a word of the notation itself says. */
final class WordPage {

  private WordPage() {}

  static Page of(Vocabulary.Keyword keyword) {
    return new Page(
        keyword.text() + ": " + place(keyword.place()),
        List.of(new Block.Paragraph(keyword.says()), new Block.Code(List.of(keyword.form()))));
  }

  private static String place(Vocabulary.Place place) {
    return switch (place) {
      case TOP -> "begins a line at the top of a file";
      case SESSION -> "stands in a session";
      case DECLARATION -> "stands in a chain or bus, before its stages";
      case STRUCTURE -> "stands among the stages, and holds further ones";
      case PART -> "stands inside the structure that it belongs to";
      case CLAUSE -> "stands at the end of a line";
    };
  }
}
