package chainwright.app.cli;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The completion script for fish: one {@code complete} a line, as its manual describes. */
final class FishCompletion {

  private final CommandSpec root;
  private final StringBuilder script = new StringBuilder();

  FishCompletion(CommandSpec root) {
    this.root = root;
  }

  String script() {
    Map<String, CommandLine> commands = root.subcommands();
    script.append("# Completions of ").append(root.name()).append(" for fish.\n");
    line("-f");
    for (Map.Entry<String, CommandLine> entry : commands.entrySet()) {
      CommandSpec command = entry.getValue().getCommandSpec();
      line(
          "-n __fish_use_subcommand -a "
              + entry.getKey()
              + " -d "
              + quoted(String.join(" ", command.usageMessage().header())));
    }
    options("__fish_use_subcommand", root);
    commands.forEach(
        (name, command) -> {
          String inside = "__fish_seen_subcommand_from " + name;
          options(quoted(inside), command.getCommandSpec());
          for (PositionalParamSpec parameter : command.getCommandSpec().positionalParameters()) {
            String taken = words(parameter);
            if (!taken.isEmpty()) {
              line("-n " + quoted(inside) + taken);
            }
          }
        });
    return script.toString();
  }

  private void options(String condition, CommandSpec command) {
    Map<String, OptionSpec> sorted = new TreeMap<>();
    command.options().forEach(option -> sorted.put(option.longestName(), option));
    for (OptionSpec option : sorted.values()) {
      StringBuilder names = new StringBuilder();
      for (String name : option.names()) {
        names.append(name.startsWith("--") ? " -l " + name.substring(2) : " -s " + name.charAt(1));
      }
      String taken = option.arity().max() == 0 ? "" : " -r" + words(option);
      line("-n " + condition + names + taken + " -d " + quoted(CompletedWord.summary(option)));
    }
  }

  private static String words(ArgSpec argument) {
    List<String> choices = CompletedWord.choices(argument);
    String files = CompletedWord.isFile(argument) ? " -F" : "";
    return files + (choices.isEmpty() ? "" : " -a " + quoted(String.join(" ", choices)));
  }

  private void line(String rest) {
    script.append("complete -c ").append(root.name()).append(' ').append(rest).append('\n');
  }

  private static String quoted(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }
}
