package chainwright.bench;

/** Writes a text of ordinary chains, each with numbers of its own so that nothing serves twice. */
final class LongText {

  private static final int CHAIN_LINES = 10;

  private LongText() {}

  /** Returns a text of so many lines; no line of it has a fault. */
  static String of(int lines) {
    StringBuilder text = new StringBuilder("bus mix {\n}\n\n");
    for (int chain = 0; (chain + 1) * CHAIN_LINES < lines; chain++) {
      text.append("chain voice-")
          .append(chain)
          .append(" \"Voice ")
          .append(chain)
          .append("\" {\n  source  lead-vocal\n  to      mix  fader -3 dB\n\n  high-pass   ")
          .append(60 + chain % 11)
          .append(" Hz  18 dB/oct\n  bell        ")
          .append(3000 + chain % 131)
          .append(
              " Hz  -2.5 dB  Q 2.2\n  compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release ")
          .append(90 + chain % 37)
          .append(" ms\n  > Only traffic lives down there.\n}\n\n");
    }
    return text.toString();
  }
}
