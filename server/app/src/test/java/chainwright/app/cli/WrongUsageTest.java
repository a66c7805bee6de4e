package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * Holds what is said about wrong arguments to one way of saying it, for every option and parameter
 * that any command has: the tables are taken from the commands themselves.
 */
class WrongUsageTest {

  /** What a command needs before its options are looked at. */
  private static final Map<String, List<String>> NEEDED =
      Map.of(
          "check", List.of("song.chain"),
          "tidy", List.of("song.chain"),
          "plot", List.of("song.chain"),
          "measure", List.of("take.wav"),
          "render", List.of("song.chain", "-o", "out.wav"),
          "demo", List.of("try-it"),
          "completion", List.of("bash"));

  /** Not a word that anything takes, and not near to one. */
  private static final String WRONG = "wrong-value";

  /** No system lets a file have it in its name. */
  private static final String NO_FILE = "a\0b";

  /** How the library of the command line says things, and what a constant of ours looks like. */
  private static final String FOREIGN =
      "(?s).*(Invalid value|is not a|case-insensitive|[Cc]ould not|cannot convert|[Mm]issing"
          + " required|Unknown option|Unmatched|mutually exclusive|only once|positional"
          + " parameter|Expected parameter|specified|java\\.|Exception|null|\\[[A-Z]{2,}).*";

  @TestFactory
  Stream<DynamicTest> value_wrongForEachOptionThatReadsIt_saysWhatIsExpectedAndFound() {
    return eachArgument(
        (command, argument) -> {
          String wrong = isFile(argument) ? NO_FILE : WRONG;
          check(
              with(command, argument, wrong),
              command,
              "`" + name(argument) + "` must be ",
              ", but was `" + wrong + "`");
        },
        argument -> argument.arity().max() > 0 && reads(argument));
  }

  @TestFactory
  Stream<DynamicTest> value_leftOutOfEachOption_saysWhatToWrite() {
    return eachArgument(
        (command, argument) -> {
          String name = "`" + name(argument) + "`";
          String written = "write `" + name(argument) + " " + argument.paramLabel() + "`: ";
          check(
              with(command, argument),
              command,
              name + " needs a value, but nothing follows it; " + written);
          check(
              with(command, argument, "--help"),
              command,
              name + " needs a value, but `--help` follows it; " + written);
        },
        argument -> argument.isOption() && argument.arity().max() > 0);
  }

  @TestFactory
  Stream<DynamicTest> value_givenToEachOptionThatTakesNone_isRefused() {
    return eachArgument(
        (command, argument) ->
            check(
                with(command, ((OptionSpec) argument).longestName() + "=yes"),
                command,
                "`" + name(argument) + "` takes no value, but was given `yes`; write it alone"),
        argument -> argument.isOption() && argument.arity().max() == 0 && !isInfo(argument));
  }

  @TestFactory
  Stream<DynamicTest> option_givenTwice_isRefused() {
    return eachArgument(
        (command, argument) -> {
          String[] given =
              argument.arity().max() == 0
                  ? new String[] {name(argument)}
                  : new String[] {name(argument), right(argument)};
          List<String> words = new ArrayList<>(with(command, given));
          words.addAll(List.of(given));
          check(words, command, "`" + name(argument) + "` is given twice; give it once");
        },
        argument ->
            argument.isOption()
                && !isInfo(argument)
                && !argument.isMultiValue()
                && (!argument.required() || argument.group() != null));
  }

  @TestFactory
  Stream<DynamicTest> required_leftOut_isNamedWithAWholeCommand() {
    return commands()
        .filter(command -> !WrongUsage.required(command).isEmpty())
        .map(
            command ->
                DynamicTest.dynamicTest(
                    command.name(),
                    () -> {
                      CommandRun run =
                          check(List.of(command.name()), command, " missing; write `chainwright ");
                      WrongUsage.required(command)
                          .forEach(one -> assertThat(run.err()).contains("`" + written(one) + "`"));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> option_unknownToEachCommand_isNamed() {
    return commands()
        .map(
            command ->
                DynamicTest.dynamicTest(
                    command.name(),
                    () -> {
                      check(
                          with(command, "--wrong-option=3"),
                          command,
                          "there is no option `--wrong-option`; the options are `",
                          "`--help`");
                      check(
                          with(command, "--hepl"),
                          command,
                          "there is no option `--hepl`; did you mean `--help`?");
                    }));
  }

  @TestFactory
  Stream<DynamicTest> argument_oneTooMany_isNamed() {
    return commands()
        .filter(
            command ->
                command.positionalParameters().stream()
                    .noneMatch(one -> one.arity().isVariable() || one.arity().max() > 2))
        .map(
            command ->
                DynamicTest.dynamicTest(
                    command.name(),
                    () -> {
                      List<String> words = new ArrayList<>(with(command));
                      // `explain` takes two.
                      words.addAll(List.of("surplus", "surplus", "surplus"));
                      check(words, command, ", but found `surplus`; leave it out");
                    }));
  }

  @TestFactory
  Stream<DynamicTest> options_eachTwoThatExcludeEachOther_areNamed() {
    return commands()
        .flatMap(command -> command.argGroups().stream().flatMap(group -> pairs(command, group)));
  }

  private static Stream<DynamicTest> pairs(CommandSpec command, ArgGroupSpec group) {
    List<OptionSpec> options = group.options();
    List<DynamicTest> pairs = new ArrayList<>();
    for (int i = 1; i < options.size(); i++) {
      OptionSpec one = options.get(0);
      OptionSpec other = options.get(i);
      pairs.add(
          DynamicTest.dynamicTest(
              command.name() + " " + one.longestName() + " " + other.longestName(),
              () -> {
                List<String> words = new ArrayList<>(with(command));
                for (OptionSpec option : List.of(one, other)) {
                  words.add(option.longestName());
                  if (option.arity().max() > 0) {
                    words.add("1");
                  }
                }
                check(
                    words,
                    command,
                    "`" + one.longestName() + "`",
                    "`" + other.longestName() + "`",
                    " exclude each other; give one of them");
              }));
    }
    return pairs.stream();
  }

  @Test
  void command_unknown_isNamed() {
    CommandSpec root = ChainwrightCommand.commandLine().getCommandSpec();
    check(List.of("chek"), root, "there is no command `chek`; did you mean `check`?");
    check(List.of("conjure"), root, "there is no command `conjure`; the commands are `check`, ");
    check(List.of("--conjure"), root, "there is no option `--conjure`; the options are ");
  }

  @Test
  void value_nearToARightOne_isGuessed() {
    CommandRun run = CommandRun.of("check", "--format", "jsn", "song.chain");
    assertThat(run.err())
        .startsWith(
            "chainwright check: `--format` must be `text` or `json`, but was `jsn`; did you mean"
                + " `json`?\n");
  }

  /** A check of one argument of one command. */
  private interface Check {
    void of(CommandSpec command, ArgSpec argument);
  }

  /** Which arguments are meant. */
  private interface Which {
    boolean is(ArgSpec argument);
  }

  private static Stream<DynamicTest> eachArgument(Check check, Which which) {
    List<DynamicTest> tests =
        commands()
            .flatMap(
                command ->
                    command.args().stream()
                        .filter(which::is)
                        .map(
                            argument ->
                                DynamicTest.dynamicTest(
                                    command.name() + " " + name(argument),
                                    () -> check.of(command, argument))))
            .toList();
    assertThat(tests).as("arguments of this kind").isNotEmpty();
    return tests.stream();
  }

  private static Stream<CommandSpec> commands() {
    return ChainwrightCommand.commandLine().getSubcommands().values().stream()
        .map(CommandLine::getCommandSpec);
  }

  private static CommandRun check(List<String> words, CommandSpec command, String... parts) {
    CommandRun run = CommandRun.of(words.toArray());
    assertThat(run.code()).as("%s%n%s", words, run.err()).isEqualTo(2);
    assertThat(run.out()).as("%s", words).isEmpty();
    assertThat(run.err())
        .startsWith(command.qualifiedName() + ": ")
        .endsWith("See `" + command.qualifiedName() + " --help`.\n")
        .contains(parts)
        .doesNotMatch(FOREIGN);
    return run;
  }

  /** A command with all that it needs, and an argument. */
  private static List<String> with(CommandSpec command, String... more) {
    List<String> words = new ArrayList<>(List.of(command.name()));
    words.addAll(NEEDED.getOrDefault(command.name(), List.of()));
    words.addAll(Arrays.asList(more));
    return words;
  }

  private static List<String> with(CommandSpec command, ArgSpec argument, String... value) {
    List<String> words = new ArrayList<>(with(command));
    if (argument instanceof OptionSpec option) {
      // What is needed already would be given twice.
      for (String name : option.names()) {
        int at = words.indexOf(name);
        if (at >= 0) {
          words.subList(at, at + 2).clear();
        }
      }
      words.add(option.longestName());
    } else {
      int index = ((PositionalParamSpec) argument).index().min();
      if (words.size() > index + 1) {
        words.remove(index + 1);
      }
      words.addAll(index + 1, Arrays.asList(value));
      return words;
    }
    words.addAll(Arrays.asList(value));
    return words;
  }

  /** Whether an argument can be wrong by itself; of a name only the command knows. */
  private static boolean reads(ArgSpec argument) {
    return argument.auxiliaryTypes()[0] != String.class;
  }

  private static boolean isFile(ArgSpec argument) {
    return argument.auxiliaryTypes()[0] == Path.class;
  }

  private static boolean isInfo(ArgSpec argument) {
    return argument instanceof OptionSpec option && (option.usageHelp() || option.versionHelp());
  }

  /** A value that the option takes. */
  private static String right(ArgSpec argument) {
    List<String> choices = CompletedWord.choices(argument);
    if (!choices.isEmpty()) {
      return choices.get(0);
    }
    if (argument.converters().length == 1 && argument.converters()[0] instanceof Argument<?> own) {
      return Stream.of("1", "48000", "16", "0:01")
          .filter(text -> isTaken(own, text))
          .findFirst()
          .orElseThrow();
    }
    return "x";
  }

  private static boolean isTaken(Argument<?> own, String text) {
    try {
      own.convert(text);
      return true;
    } catch (CommandLine.TypeConversionException refused) {
      return false;
    } catch (Exception unexpected) {
      throw new AssertionError(unexpected);
    }
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }

  private static String written(ArgSpec argument) {
    return argument instanceof OptionSpec option
        ? option.shortestName() + " " + option.paramLabel()
        : argument.paramLabel();
  }
}
