package chainwright.app;

import chainwright.app.cli.ChainwrightCommand;
import chainwright.app.lsp.StdioServer;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;

/** Starts the language server or the command line. */
public final class Main {

  private Main() {}

  /**
   * Runs, and ends the process with the run's exit code.
   *
   * @param arguments {@code lsp} for the language server, else those of the command line
   */
  public static void main(String[] arguments) {
    // The server starts without the command line's parser, which would cost a third of the start.
    boolean isServer = arguments.length == 1 && arguments[0].equals("lsp");
    System.exit(isServer ? serve() : ChainwrightCommand.run(arguments));
  }

  private static int serve() {
    // Standard output is the protocol's: whatever else is printed must not get into it.
    System.setOut(System.err);
    return StdioServer.serve(
        new FileInputStream(FileDescriptor.in),
        new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)));
  }
}
