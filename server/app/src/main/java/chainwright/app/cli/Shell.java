package chainwright.app.cli;

import picocli.AutoComplete;
import picocli.CommandLine;

/** A shell that completes words. */
enum Shell {
  /** Bash, with or without its package of completions. */
  BASH,
  /** Zsh, by its own completion system. */
  ZSH,
  /** Fish. */
  FISH;

  /**
   * Writes the script that teaches this shell a command line.
   *
   * @param line the whole command line
   * @return the script, each line with its end
   */
  String scriptOf(CommandLine line) {
    return switch (this) {
      case BASH -> AutoComplete.bash(line.getCommandName(), line);
      case ZSH -> new ZshCompletion(line.getCommandSpec()).script();
      case FISH -> new FishCompletion(line.getCommandSpec()).script();
    };
  }
}
