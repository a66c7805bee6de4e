package chainwright.bench;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;

/** Another library at work in a process of its own, which answers each line with a line. */
final class Peer implements AutoCloseable {

  private final BufferedWriter to;
  private final BufferedReader from;

  private Peer(Process process) {
    to =
        new BufferedWriter(
            new OutputStreamWriter(process.getOutputStream(), StandardCharsets.UTF_8));
    from =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  static Peer start(String... command) throws IOException {
    return new Peer(
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start());
  }

  /** Returns the words of the answer. */
  String[] ask(String line) throws IOException {
    to.write(line + "\n");
    to.flush();
    String answer = from.readLine();
    if (answer == null) {
      throw new IOException("the other library's process ended early");
    }
    return answer.split(" ", -1);
  }

  @Override
  public void close() throws IOException {
    to.close();
    from.close();
  }
}
