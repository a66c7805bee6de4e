package chainwright.app.cli;

import chainwright.notation.lowering.Nearest;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with the arguments, and where the right ones are described. */
final class WrongUsage {

  private WrongUsage() {}

  /**
   * Reports wrong arguments.
   *
   * @param wrong what the parser found
   * @param arguments the arguments
   * @return the exit code
   */
  static int report(ParameterException wrong, String[] arguments) {
    CommandLine line = wrong.getCommandLine();
    PrintWriter err = line.getErr();
    String name = line.getCommandSpec().qualifiedName();
    err.println(name + ": " + message(wrong, line));
    err.println("See `" + name + " --help`.");
    return ChainwrightCommand.TROUBLE;
  }

  private static String message(ParameterException wrong, CommandLine line) {
    boolean isRoot = line.getParent() == null;
    if (isRoot && wrong instanceof UnmatchedArgumentException unmatched) {
      String word = unmatched.getUnmatched().get(0);
      if (!word.startsWith("-")) {
        return "there is no command `" + word + "`" + guess(word, line);
      }
    }
    return String.valueOf(wrong.getMessage());
  }

  private static String guess(String word, CommandLine line) {
    List<String> near = Nearest.to(word, line.getSubcommands().keySet());
    return near.isEmpty() ? "" : "; did you mean `" + near.get(0) + "`?";
  }
}
