package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class CompletionCommandTest {

  @ParameterizedTest
  @ValueSource(strings = {"bash", "zsh", "fish"})
  void script_ofAnyShell_knowsEveryCommandAndOption(String shell) {
    CommandRun run = CommandRun.of("completion", shell);
    assertThat(run.code()).as(run.err()).isZero();
    CommandLine root = ChainwrightCommand.commandLine();
    assertThat(root.getSubcommands()).isNotEmpty();
    root.getSubcommands()
        .forEach(
            (name, command) -> {
              assertThat(run.out()).contains(name);
              for (OptionSpec option : command.getCommandSpec().options()) {
                assertThat(run.out()).contains(option.longestName().substring(2));
              }
            });
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      textBlock =
          """
          zsh  | *:FILE:_files
          zsh  | :FORMAT:(text svg png csv json)
          fish | from check' -F
          fish | -l format -r -a 'text svg png csv json'
          """)
  void script_whereFilesOrWordsAreMeant_offersThem(String shell, String offer) {
    assertThat(CommandRun.of("completion", shell).out()).contains(offer);
  }

  @ParameterizedTest
  @ValueSource(strings = {"tcsh", ""})
  void shell_unknown_isRefused(String shell) {
    CommandRun run = CommandRun.of("completion", shell);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).containsIgnoringCase("bash").contains("completion --help");
  }
}
