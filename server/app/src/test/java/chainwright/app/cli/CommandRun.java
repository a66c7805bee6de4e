package chainwright.app.cli;

import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;

/**
 * What one run of the command line did.
 *
 * @param code the exit code
 * @param out what it printed
 * @param err what it complained about
 */
record CommandRun(int code, String out, String err) {

  static CommandRun of(Object... arguments) {
    return withInput("", arguments);
  }

  static CommandRun withInput(String input, Object... arguments) {
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = arguments[i].toString();
    }
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        ChainwrightCommand.run(
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(out, true),
            new PrintWriter(err, true),
            words);
    return new CommandRun(code, out.toString(), err.toString());
  }
}
