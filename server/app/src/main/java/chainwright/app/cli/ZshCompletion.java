package chainwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The completion script for zsh: a function for {@code _arguments}, as zshcompsys describes. */
final class ZshCompletion {

  private static final String INDENT = "        ";

  private final CommandSpec root;

  ZshCompletion(CommandSpec root) {
    this.root = root;
  }

  String script() {
    StringBuilder script = new StringBuilder();
    script.append("#compdef ").append(root.name()).append("\n\n");
    script.append("local context state state_descr line\ntypeset -A opt_args\nlocal -a commands\n");
    script.append("commands=(\n");
    root.subcommands()
        .forEach(
            (name, command) ->
                script.append("  ").append(quoted(name + ":" + header(command))).append('\n'));
    script.append(")\n_arguments -C");
    options(root).forEach(option -> script.append(" \\\n  ").append(option));
    script.append(" \\\n  '1:command:->command' '*::argument:->argument' && return 0\n");
    script.append("case $state in\n  command) _describe -t commands command commands ;;\n");
    script.append("  argument)\n    case $line[1] in\n");
    root.subcommands().forEach((name, command) -> script.append(branch(name, command)));
    script.append("    esac\n    ;;\nesac\n");
    return script.toString();
  }

  private static String header(CommandLine command) {
    return String.join(" ", command.getCommandSpec().usageMessage().header());
  }

  private static String branch(String name, CommandLine command) {
    List<String> parts = new ArrayList<>(options(command.getCommandSpec()));
    int place = 0;
    for (PositionalParamSpec parameter : command.getCommandSpec().positionalParameters()) {
      place++;
      String where = parameter.arity().max() > 1 ? "*" : Integer.toString(place);
      parts.add(quoted(where + ":" + words(parameter)));
    }
    return "      "
        + name
        + ")\n"
        + INDENT
        + "_arguments \\\n"
        + INDENT
        + "  "
        + String.join(" \\\n" + INDENT + "  ", parts)
        + "\n"
        + INDENT
        + ";;\n";
  }

  private static List<String> options(CommandSpec command) {
    Map<String, OptionSpec> sorted = new TreeMap<>();
    command.options().forEach(option -> sorted.put(option.longestName(), option));
    List<String> parts = new ArrayList<>();
    for (OptionSpec option : sorted.values()) {
      String names = String.join(" ", option.names());
      String value = option.arity().max() == 0 ? "" : ":" + words(option);
      for (String name : option.names()) {
        parts.add(
            quoted(
                "("
                    + names
                    + ")"
                    + name
                    + "["
                    + escaped(CompletedWord.summary(option))
                    + "]"
                    + value));
      }
    }
    return parts;
  }

  private static String words(ArgSpec argument) {
    List<String> choices = CompletedWord.choices(argument);
    String what = escaped(argument.paramLabel().replace("<", "").replace(">", ""));
    if (!choices.isEmpty()) {
      return what + ":(" + String.join(" ", choices) + ")";
    }
    return what + ":" + (CompletedWord.isFile(argument) ? "_files" : " ");
  }

  /** Colons and brackets part the fields of a specification. */
  private static String escaped(String text) {
    return text.replace("\\", "\\\\").replace(":", "\\:").replace("[", "\\[").replace("]", "\\]");
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "'\\''") + "'";
  }
}
