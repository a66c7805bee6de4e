package chainwright.app.cli;

import chainwright.notation.lowering.Nearest;
import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MaxValuesExceededException;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.MutuallyExclusiveArgsException;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Says what is wrong with the arguments: what was expected, what was found and what to do, and
 * where the right ones are described.
 *
 * @param spec the command that they are given to
 * @param arguments the arguments of the process
 */
record WrongUsage(CommandSpec spec, List<String> arguments) {

  /**
   * Reports wrong arguments.
   *
   * @param wrong what the parser or a command found
   * @param arguments the arguments
   * @return the exit code
   */
  static int report(ParameterException wrong, String[] arguments) {
    CommandLine line = wrong.getCommandLine();
    PrintWriter err = line.getErr();
    String name = line.getCommandSpec().qualifiedName();
    err.println(
        name + ": " + new WrongUsage(line.getCommandSpec(), List.of(arguments)).message(wrong));
    err.println("See `" + name + " --help`.");
    return ChainwrightCommand.TROUBLE;
  }

  private String message(ParameterException wrong) {
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched.getUnmatched().get(0));
    }
    if (wrong instanceof MissingParameterException missing) {
      return missing(missing.getMissing());
    }
    if (wrong instanceof MutuallyExclusiveArgsException) {
      return exclusive();
    }
    if (wrong instanceof OverwrittenOptionException overwritten) {
      return twice(name(overwritten.getOverwritten()));
    }
    if (wrong instanceof MaxValuesExceededException) {
      return twice(repeated());
    }
    return wrong.getArgSpec() == null
        ? String.valueOf(wrong.getMessage())
        : badValue(wrong.getArgSpec(), wrong.getValue());
  }

  private String unmatched(String word) {
    if (word.startsWith("-") && word.length() > 1) {
      String option = word.split("=", 2)[0];
      List<String> known =
          spec.options().stream().flatMap(one -> List.of(one.names()).stream()).toList();
      return "there is no option `" + option + "`" + guess(option, known, "; the options are ");
    }
    if (!spec.subcommands().isEmpty()) {
      List<String> known = List.copyOf(spec.subcommands().keySet());
      return "there is no command `" + word + "`" + guess(word, known, "; the commands are ");
    }
    return "`" + spec.name() + "` takes " + taken() + ", but found `" + word + "`; leave it out";
  }

  private String taken() {
    List<PositionalParamSpec> parameters = spec.positionalParameters();
    if (parameters.isEmpty()) {
      return "no arguments";
    }
    PositionalParamSpec last = parameters.get(parameters.size() - 1);
    int most = last.arity().max();
    return (most > 1 ? "at most " + most + " of " : "one ") + last.paramLabel();
  }

  private static String guess(String word, List<String> known, String otherwise) {
    List<String> near = Nearest.to(word, known);
    return near.isEmpty()
        ? otherwise + listed(known, "and")
        : "; did you mean `" + near.get(0) + "`?";
  }

  private String missing(List<ArgSpec> missing) {
    ArgSpec first = missing.get(0);
    if (first instanceof OptionSpec option && isGiven(option)) {
      String written = "`" + name(option) + " " + option.paramLabel() + "`";
      return "`"
          + name(option)
          + "` needs a value, but "
          + behind(option)
          + " follows it; write "
          + written
          + ": "
          + uncapitalised(CompletedWord.summary(option));
    }
    List<ArgSpec> required = required(spec);
    List<String> shown =
        required.stream().filter(missing::contains).map(WrongUsage::shown).toList();
    return listed(shown, "and")
        + (shown.size() == 1 ? " is" : " are")
        + " missing; write `"
        + spec.qualifiedName()
        + required.stream().map(arg -> " " + shown(arg)).collect(Collectors.joining())
        + "`";
  }

  /** What a command cannot do without, options last; of a group none of the options is. */
  static List<ArgSpec> required(CommandSpec command) {
    return command.args().stream()
        .filter(argument -> argument.required() && argument.group() == null)
        .sorted(Comparator.comparing(ArgSpec::isOption))
        .toList();
  }

  private boolean isGiven(OptionSpec option) {
    return arguments.stream().anyMatch(word -> List.of(option.names()).contains(word));
  }

  private String behind(OptionSpec option) {
    for (int i = 0; i + 1 < arguments.size(); i++) {
      if (List.of(option.names()).contains(arguments.get(i))) {
        return "`" + arguments.get(i + 1) + "`";
      }
    }
    return "nothing";
  }

  private static String shown(ArgSpec argument) {
    return argument instanceof OptionSpec option
        ? option.shortestName() + " " + option.paramLabel()
        : argument.paramLabel();
  }

  private String exclusive() {
    List<String> given =
        spec.argGroups().stream()
            .map(this::given)
            .filter(names -> names.size() > 1)
            .findFirst()
            .orElseThrow();
    return listed(given, "and") + " exclude each other; give one of them";
  }

  private List<String> given(ArgGroupSpec group) {
    return group.options().stream()
        .filter(option -> arguments.stream().anyMatch(word -> isNamed(option, word)))
        .map(WrongUsage::name)
        .toList();
  }

  private static String twice(String name) {
    return "`" + name + "` is given twice; give it once";
  }

  /** The option of a group that is given twice; in groups they have no short names. */
  private String repeated() {
    return spec.options().stream()
        .filter(option -> arguments.stream().filter(word -> isNamed(option, word)).count() > 1)
        .map(WrongUsage::name)
        .findFirst()
        .orElseThrow();
  }

  private static boolean isNamed(OptionSpec option, String word) {
    return List.of(option.names()).contains(word.split("=", 2)[0]);
  }

  private static String badValue(ArgSpec argument, String value) {
    if (argument.arity().max() == 0) {
      String name = name(argument);
      return "`" + name + "` takes no value, but was given `" + value + "`; write it alone";
    }
    List<String> choices = CompletedWord.choices(argument);
    List<String> near = Nearest.to(value, choices);
    return "`"
        + name(argument)
        + "` must be "
        + expected(argument, choices)
        + ", but was `"
        + value
        + "`"
        + (near.isEmpty() ? "" : "; did you mean `" + near.get(0) + "`?");
  }

  private static String expected(ArgSpec argument, List<String> choices) {
    if (argument.converters().length == 1 && argument.converters()[0] instanceof Argument<?> own) {
      return own.expected();
    }
    return choices.isEmpty() ? "the name of a file" : listed(choices, "or");
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }

  private static String listed(List<String> words, String last) {
    List<String> quoted = words.stream().map(word -> "`" + word + "`").toList();
    int end = quoted.size() - 1;
    return end == 0
        ? quoted.get(0)
        : String.join(", ", quoted.subList(0, end)) + " " + last + " " + quoted.get(end);
  }

  private static String uncapitalised(String sentence) {
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
  }
}
