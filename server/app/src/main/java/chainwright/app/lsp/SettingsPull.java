package chainwright.app.lsp;

import com.google.gson.JsonElement;
import java.util.List;
import org.eclipse.lsp4j.ConfigurationItem;
import org.eclipse.lsp4j.ConfigurationParams;

/** Asks the editor for its {@code chainwright} section. */
final class SettingsPull {

  private SettingsPull() {}

  /** Asks, and takes the answer when it comes; without one the settings stay what they were. */
  static void start(Session session, FindingsPublisher publisher) {
    ConfigurationItem item = new ConfigurationItem();
    item.setSection("chainwright");
    var unused =
        session
            .client()
            .configuration(new ConfigurationParams(List.of(item)))
            .thenAccept(
                answers -> {
                  // Editors answer null where the user has set nothing: the start options hold.
                  if (!answers.isEmpty()
                      && answers.get(0) instanceof JsonElement json
                      && !json.isJsonNull()) {
                    session.configure(json);
                    publisher.changedEverything();
                  }
                });
  }
}
