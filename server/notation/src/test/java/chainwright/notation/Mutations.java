package chainwright.notation;

import java.util.List;
import java.util.Random;

/**
 * Texts that a keyboard, a clipboard or a bad merge could make of others: short stretches of them
 * with pieces cut out, doubled, exchanged and inserted.
 */
public final class Mutations {

  private static final String[] SCRAPS = {
    "{",
    "}",
    "\"",
    "\n",
    "\r\n",
    "\r",
    " ",
    "  ",
    "\t",
    "#",
    ">",
    "...",
    "\u2026",
    "=",
    "%",
    "\u00b0",
    "-",
    "+",
    "\u2212",
    "\u2013",
    ".",
    ",",
    ":",
    "/",
    "//",
    ";",
    "\\",
    "0",
    "7",
    ".5",
    "1/3",
    "3:1",
    "0:31.20",
    "1000 Hz",
    "0.5 kHz",
    "200 to 3000 Hz",
    "Q",
    "q 2.20",
    " to ",
    " dB",
    "dB/oct",
    "parsec",
    "chain a {",
    "\nbus b",
    "\nnote \"n\"",
    " bypassed",
    " as x",
    " deliberate rule \"r\"",
    "\u00a0",
    "\u200b",
    "\ufeff",
    "\u201c",
    "\u201d",
    "\ud83d\ude00",
    "\ud83d",
    "{ }",
    "\n{\n",
    "}\n}",
    "\n\n\n",
    "\n> prose",
    "\n... more 3 dB",
    " # c",
    "\n# c\n",
    "\u0000",
    "e\u0301"
  };

  private final Random random;
  private final List<String> texts;

  /**
   * Makes a source of texts.
   *
   * @param random a seeded source of chance
   * @param texts what to mutate
   */
  public Mutations(Random random, List<String> texts) {
    this.random = random;
    this.texts = texts;
  }

  /**
   * Returns another text.
   *
   * @return up to some hundred characters of a text, mutated one to six times
   */
  public String next() {
    String whole = texts.get(random.nextInt(texts.size()));
    int from = random.nextInt(3) == 0 ? place(whole) : 0;
    String text = whole.substring(from, Math.min(whole.length(), from + 40 + random.nextInt(360)));
    int count = 1 + random.nextInt(6);
    for (int i = 0; i < count; i++) {
      text = mutate(text);
    }
    return text;
  }

  /**
   * Returns a text that differs from another in one place.
   *
   * @param text the text
   * @return its neighbour
   */
  public String mutate(String text) {
    int start = place(text);
    int end = Math.min(text.length(), start + random.nextInt(12));
    String stretch = text.substring(start, end);
    String scrap = SCRAPS[random.nextInt(SCRAPS.length)];
    return switch (random.nextInt(6)) {
      case 0 -> text.substring(0, start) + text.substring(end);
      case 1 -> text.substring(0, end) + stretch + text.substring(end);
      case 2 -> text.substring(0, start) + scrap + text.substring(end);
      case 3 -> text.substring(0, start);
      default -> text.substring(0, start) + scrap + text.substring(start);
    };
  }

  private int place(String text) {
    return random.nextInt(text.length() + 1);
  }
}
