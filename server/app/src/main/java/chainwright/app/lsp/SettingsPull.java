package chainwright.app.lsp;

/** Asks the editor for its {@code chainwright} section. */
final class SettingsPull {

  private SettingsPull() {}

  /** Asks, and takes the answer when it comes; without one the settings stay what they were. */
  static void start(Session session, FindingsPublisher publisher) {
    var unused =
        session
            .editor()
            .settings("chainwright")
            .thenAccept(
                answer -> {
                  // Editors answer null where the user has set nothing: the start options hold.
                  if (!answer.isJsonNull()) {
                    session.configure(answer);
                    publisher.changedEverything();
                  }
                });
  }
}
