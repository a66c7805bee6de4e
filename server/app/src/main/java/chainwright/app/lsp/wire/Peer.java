package chainwright.app.lsp.wire;

import com.google.gson.JsonElement;
import java.util.concurrent.CompletableFuture;

/** What answers the messages of the other side. Its methods are called in the order of messages. */
public interface Peer {

  /**
   * Answers a request.
   *
   * @param method what is asked
   * @param params the parameters; JSON's null where there are none
   * @return the result; it fails with a {@code ResponseErrorException} where the request is refused
   */
  CompletableFuture<?> request(String method, JsonElement params);

  /**
   * Takes a notification, which is never answered.
   *
   * @param method what is told
   * @param params the parameters; JSON's null where there are none
   */
  void notify(String method, JsonElement params);
}
