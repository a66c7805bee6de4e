package chainwright.app.workspace;

import chainwright.notation.syntax.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.Function;

/**
 * Shares work between the thread that asks and a helper: each takes the next item that nobody has
 * taken. If the helper is busy elsewhere, the thread that asks does everything.
 *
 * @param helper runs the helper's share
 */
public record TwoThreads(Executor helper) implements Spread {

  /** Fewer items are done sooner than a helper wakes up. */
  private static final int WORTH_SHARING = 4;

  @Override
  public <A, B> List<B> map(List<A> items, Function<? super A, ? extends B> work) {
    if (items.size() < WORTH_SHARING) {
      return Spread.IN_TURN.map(items, work);
    }
    AtomicReferenceArray<B> results = new AtomicReferenceArray<>(items.size());
    AtomicInteger next = new AtomicInteger();
    Runnable share =
        () -> {
          for (int i = next.getAndIncrement(); i < items.size(); i = next.getAndIncrement()) {
            results.set(i, work.apply(items.get(i)));
          }
        };
    AtomicBoolean isTaken = new AtomicBoolean();
    CompletableFuture<Void> helped = new CompletableFuture<>();
    helper.execute(
        () -> {
          if (isTaken.compareAndSet(false, true)) {
            try {
              share.run();
              helped.complete(null);
            } catch (RuntimeException | Error failure) {
              helped.completeExceptionally(failure);
            }
          }
        });
    share.run();
    // Nothing is left to take; a helper that has begun still works on its last item.
    if (!isTaken.compareAndSet(false, true)) {
      helped.join();
    }
    List<B> list = new ArrayList<>(items.size());
    for (int i = 0; i < items.size(); i++) {
      list.add(results.get(i));
    }
    return list;
  }
}
