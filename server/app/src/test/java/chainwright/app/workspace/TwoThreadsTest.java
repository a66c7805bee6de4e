package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class TwoThreadsTest {

  private static final List<Integer> ITEMS = IntStream.range(0, 1000).boxed().toList();
  private static final List<Integer> SQUARES = ITEMS.stream().map(item -> item * item).toList();

  private final ExecutorService helper = Executors.newSingleThreadExecutor();

  @AfterEach
  void end() {
    helper.shutdownNow();
  }

  @Test
  void map_withAHelper_givesResultsInTheOrderOfTheItems() {
    assertThat(new TwoThreads(helper).map(ITEMS, item -> item * item)).isEqualTo(SQUARES);
  }

  @Test
  void map_withAHelperThatNeverComes_doesEverythingItself() {
    assertThat(new TwoThreads(work -> {}).map(ITEMS, item -> item * item)).isEqualTo(SQUARES);
  }

  @Test
  void map_ofAFewItems_asksForNoHelp() {
    TwoThreads alone =
        new TwoThreads(
            work -> {
              throw new AssertionError("nobody is needed");
            });
    assertThat(alone.map(ITEMS.subList(0, 3), item -> item * item)).isEqualTo(List.of(0, 1, 4));
  }

  @Test
  void map_ofWorkThatFails_fails() {
    TwoThreads two = new TwoThreads(helper);
    assertThatThrownBy(
            () ->
                two.map(
                    ITEMS,
                    item -> {
                      throw new IllegalStateException("cannot do " + item);
                    }))
        .hasStackTraceContaining("cannot do");
  }
}
