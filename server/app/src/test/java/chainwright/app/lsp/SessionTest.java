package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chainwright.app.lsp.wire.Connection;
import chainwright.app.lsp.wire.Json;
import chainwright.app.workspace.PositionEncoding;
import chainwright.app.workspace.TextChange;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.OutputStream;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SessionTest {

  private static final String URI = "file:///r/a.chain";

  private final ExecutorService workers = Executors.newSingleThreadExecutor();
  private final CountDownLatch isAsked = new CountDownLatch(1);
  private final CountDownLatch mayAnswer = new CountDownLatch(1);
  private final Session session =
      new Session(
          CompletableFuture.completedFuture(new SectionReader(Catalogue.load())),
          workers,
          new Editor(new Connection(OutputStream.nullOutputStream(), new Json(builder -> {}))));

  @BeforeEach
  void begin() {
    session.begin(ClientTraits.of(new Announced(new JsonObject())), JsonNull.INSTANCE);
    session.documents().open(URI, 1, "chain a { }");
  }

  @AfterEach
  void end() {
    workers.shutdownNow();
  }

  @Test
  void answer_documentEditedMeanwhile_isDropped() throws InterruptedException {
    CompletableFuture<String> answer = ask();
    isAsked.await();
    edit("chain b { }");
    mayAnswer.countDown();
    assertThatThrownBy(() -> answer.orTimeout(20, TimeUnit.SECONDS).join())
        .isInstanceOf(CompletionException.class)
        .cause()
        .isInstanceOfSatisfying(
            ResponseErrorException.class,
            error ->
                assertThat(error.getResponseError().getCode())
                    .isEqualTo(ResponseErrorCode.ContentModified.getValue()));
  }

  @Test
  void answer_editBeforeTheRequest_isSeen() {
    edit("chain b { }");
    mayAnswer.countDown();
    assertThat(ask().orTimeout(20, TimeUnit.SECONDS).join()).isEqualTo("chain b { }");
  }

  @Test
  void answer_otherDocumentEditedMeanwhile_isGiven() throws InterruptedException {
    CompletableFuture<String> answer = ask();
    isAsked.await();
    session.documents().open("file:///r/b.chain", 1, "");
    mayAnswer.countDown();
    assertThat(answer.orTimeout(20, TimeUnit.SECONDS).join()).isEqualTo("chain a { }");
  }

  @Test
  void answer_cancelled_stopsTheWork() throws InterruptedException {
    CountDownLatch isStopped = new CountDownLatch(1);
    CompletableFuture<String> answer =
        session.answer(
            new TextDocumentIdentifier(URI),
            "",
            (params, request) -> {
              isAsked.countDown();
              await(mayAnswer);
              try {
                request.cancel().checkCanceled();
              } catch (CancellationException e) {
                isStopped.countDown();
                throw e;
              }
              return "";
            });
    isAsked.await();
    answer.cancel(true);
    mayAnswer.countDown();
    assertThat(isStopped.await(20, TimeUnit.SECONDS)).isTrue();
  }

  private CompletableFuture<String> ask() {
    return session.answer(
        new TextDocumentIdentifier(URI),
        "",
        (params, request) -> {
          isAsked.countDown();
          await(mayAnswer);
          return request.document().text();
        });
  }

  private void edit(String text) {
    session.documents().change(URI, 2, List.of(TextChange.ofWhole(text)), PositionEncoding.UTF_16);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }
}
