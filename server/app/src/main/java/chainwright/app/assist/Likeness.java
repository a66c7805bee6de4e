package chainwright.app.assist;

import chainwright.app.assist.Completing.Answer;
import chainwright.notation.lowering.Nearest;
import chainwright.notation.lowering.TradeWords;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Keeps in a list what a misspelt word may have meant. An editor leaves out what does not begin as
 * typed, so that a list for such a word would be empty.
 *
 * @param line the line with the word
 */
record Likeness(WrittenLine line) {

  /** Fewer letters in common are chance. */
  private static final int BEGINNING = 2;

  /**
   * Chooses what is offered for the word: all of it if anything begins as typed, else what is near
   * to it, else what could stand here at all. A name that is not defined may be a new one.
   *
   * @param answer what could stand here
   * @return the same where the editor finds something in it by itself
   */
  Answer in(Answer answer) {
    String typed = line.prefix();
    boolean isWord = !typed.isEmpty() && Character.isLetter(typed.charAt(0)) && !line.isQuoted();
    if (!isWord || answer.proposals().stream().anyMatch(one -> begins(one.filter(), typed))) {
      return answer;
    }
    List<Proposal> near = near(answer.proposals());
    List<Proposal> offered =
        near.isEmpty()
            ? answer.proposals().stream().filter(one -> one.kind() != Proposal.Kind.NAME).toList()
            : near;
    return new Answer(offered.stream().map(one -> one.withFilter(typed)).toList(), false);
  }

  /** What the word is said for, what it is nearest to, what begins likewise; in this order. */
  private List<Proposal> near(List<Proposal> proposals) {
    List<String> known = proposals.stream().map(Proposal::text).toList();
    Set<String> meant = new LinkedHashSet<>(TradeWords.writtenFor(line.word()));
    meant.addAll(Nearest.to(line.word(), known));
    meant.addAll(Nearest.to(line.prefix(), known));
    String beginning = beginning(known);
    if (beginning.length() >= BEGINNING) {
      known.stream().filter(one -> begins(one, beginning)).forEach(meant::add);
    }
    List<Proposal> near = new ArrayList<>();
    for (String word : meant) {
      proposals.stream().filter(one -> one.text().equals(word)).limit(1).forEach(near::add);
    }
    return near;
  }

  /** As much of what is typed as anything begins with. */
  private String beginning(List<String> known) {
    String begun = line.prefix();
    while (!begun.isEmpty()) {
      String beginning = begun;
      if (known.stream().anyMatch(one -> begins(one, beginning))) {
        return beginning;
      }
      begun = begun.substring(0, begun.length() - 1);
    }
    return begun;
  }

  private static boolean begins(String word, String beginning) {
    return word.toLowerCase(Locale.ROOT).startsWith(beginning.toLowerCase(Locale.ROOT));
  }
}
