package chainwright.app.assist;

import chainwright.notation.lowering.Vocabulary;
import chainwright.quantity.Unit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * What is known of the line that is being written.
 *
 * @param block the word that opened the block around it; empty text at the top of a file
 * @param stageAbove the first word of the line above in the same block, if it is no declaration
 * @param source the kind of source that the chain declares
 * @param words the words before the one that is being written; units are not among them
 * @param units the units before it
 * @param isAfterValue whether a number or a text stands right before the caret's word
 * @param isCut whether a negative gain stands before it
 * @param prefixLength how many characters of the word are written already
 */
public record WrittenLine(
    String block,
    Optional<String> stageAbove,
    Optional<String> source,
    List<String> words,
    List<Unit> units,
    boolean isAfterValue,
    boolean isCut,
    int prefixLength) {

  /**
   * Copies the lists.
   *
   * @param block the word that opened the block
   * @param stageAbove the first word of the line above
   * @param source the kind of source
   * @param words the words before
   * @param units the units before
   * @param isAfterValue whether a value stands right before
   * @param isCut whether a negative gain stands before
   * @param prefixLength the length of what is written of the word
   */
  public WrittenLine {
    words = List.copyOf(words);
    units = List.copyOf(units);
  }

  /**
   * Reads the text before the caret.
   *
   * @param section the text of the section that holds the caret
   * @param caret the offset of the caret in it
   * @return what is known; empty inside a comment, a note or a text in quotes
   */
  public static Optional<WrittenLine> of(String section, int caret) {
    int lineStart = caret;
    while (lineStart > 0 && "\r\n".indexOf(section.charAt(lineStart - 1)) < 0) {
      lineStart--;
    }
    Deque<String> blocks = new ArrayDeque<>();
    Deque<Optional<String>> above = new ArrayDeque<>();
    above.push(Optional.empty());
    Optional<String> source = Optional.empty();
    for (String line : section.substring(0, lineStart).split("\\R", -1)) {
      String code = withoutComment(line).strip();
      String[] parts = code.split("\\s+", -1);
      if (parts[0].equals("source") && parts.length > 1) {
        source = Optional.of(parts[1]);
      }
      boolean isStage =
          !parts[0].isEmpty() && Character.isLetter(parts[0].charAt(0)) && !isDeclaration(parts[0]);
      if (isStage) {
        above.pop();
        above.push(Optional.of(parts[0]));
      }
      for (int i = 0; i < code.length(); i++) {
        if (code.charAt(i) == '{') {
          blocks.push(parts[0]);
          above.push(Optional.empty());
        } else if (code.charAt(i) == '}' && !blocks.isEmpty()) {
          blocks.pop();
          above.pop();
        }
      }
    }
    String before = section.substring(lineStart, caret);
    if (before.strip().startsWith("...") && lineStart > 0) {
      int previous = section.lastIndexOf('\n', lineStart - 2) + 1;
      before = section.substring(previous, lineStart).strip() + " " + before.strip().substring(3);
      before = section.charAt(caret - 1) == ' ' ? before + " " : before;
    }
    if (withoutComment(before).length() < before.length() || before.strip().startsWith(">")) {
      return Optional.empty();
    }
    if (before.chars().filter(c -> c == '"').count() % 2 == 1) {
      return Optional.empty();
    }
    return Optional.of(ofLine(before, blocks, above.peek(), source));
  }

  private static WrittenLine ofLine(
      String before, Deque<String> blocks, Optional<String> stageAbove, Optional<String> source) {
    int opened = before.lastIndexOf('{');
    String inner = before.substring(opened + 1);
    String block = blocks.isEmpty() ? "" : blocks.peek();
    if (opened >= 0) {
      block = before.strip().split("\\s+", -1)[0];
    }
    int prefix = 0;
    while (prefix < inner.length() && isWordPart(inner.charAt(inner.length() - 1 - prefix))) {
      prefix++;
    }
    List<String> words = new ArrayList<>();
    List<Unit> units = new ArrayList<>();
    boolean isCut = false;
    boolean isAfterValue = false;
    for (String part : inner.substring(0, inner.length() - prefix).strip().split("\\s+", -1)) {
      boolean isNumber = part.matches("[+\\-\u2212\u2013]?\\d.*");
      isAfterValue = isNumber || Unit.parse(part).isPresent() || part.endsWith("\"");
      isCut |= isNumber && !part.startsWith("+") && !Character.isDigit(part.charAt(0));
      String letters = isNumber ? part.replaceFirst("^[^A-Za-z%]*", "") : part;
      Optional<Unit> unit = Unit.parse(letters);
      if (unit.isPresent()) {
        units.add(unit.get());
      } else if (!isNumber && !part.isEmpty() && !part.equals("...")) {
        words.add(part);
      }
    }
    return new WrittenLine(block, stageAbove, source, words, units, isAfterValue, isCut, prefix);
  }

  private static boolean isDeclaration(String word) {
    return Vocabulary.find(word).isPresent();
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || "-_.+:/".indexOf(c) >= 0;
  }

  private static String withoutComment(String line) {
    boolean isQuoted = false;
    for (int i = 0; i < line.length(); i++) {
      if (line.charAt(i) == '"') {
        isQuoted = !isQuoted;
      } else if (line.charAt(i) == '#' && !isQuoted) {
        return line.substring(0, i);
      }
    }
    return line;
  }
}
