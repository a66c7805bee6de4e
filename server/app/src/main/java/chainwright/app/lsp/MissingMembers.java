package chainwright.app.lsp;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.jsonrpc.MessageIssueException;
import org.eclipse.lsp4j.jsonrpc.messages.MessageIssue;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.validation.ReflectiveMessageValidator;

/**
 * Says which members a request lacks. Only one that has failed is looked at: to do so reads the
 * protocol's classes by reflection.
 */
final class MissingMembers {

  private static final Pattern PATH = Pattern.compile("Path: \\$\\.(\\S+)");

  private MissingMembers() {}

  /**
   * Returns why a request failed.
   *
   * @param params what was asked
   * @param thrown what happened
   * @return that something is missing in what was asked; what happened, if nothing is
   */
  static RuntimeException or(Object params, RuntimeException thrown) {
    return in(params)
        .<RuntimeException>map(said -> Session.error(ResponseErrorCode.InvalidParams, said))
        .orElse(thrown);
  }

  private static Optional<String> in(Object params) {
    RequestMessage message = new RequestMessage();
    message.setId(0);
    message.setMethod("");
    message.setParams(params);
    try {
      new ReflectiveMessageValidator(unused -> {}).consume(message);
      return Optional.empty();
    } catch (MessageIssueException e) {
      return Optional.of(
          e.getIssues().stream().map(MissingMembers::said).collect(Collectors.joining(", ")));
    }
  }

  private static String said(MessageIssue issue) {
    Matcher path = PATH.matcher(issue.getText());
    return path.find() ? "`" + path.group(1) + "` is missing" : issue.getText();
  }
}
