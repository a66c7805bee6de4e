package chainwright.notation.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * How the same work on many sections is done: by one thread, or by as many as whoever calls has.
 * The result is the same.
 */
public interface Spread {

  /** One after the other, by the thread that asks. */
  Spread IN_TURN =
      new Spread() {
        @Override
        public <A, B> List<B> map(List<A> items, Function<? super A, ? extends B> work) {
          List<B> results = new ArrayList<>(items.size());
          for (A item : items) {
            results.add(work.apply(item));
          }
          return results;
        }
      };

  /**
   * Works on each item.
   *
   * @param <A> what is worked on
   * @param <B> what comes of it
   * @param items the items
   * @param work the work, which must not depend on the order and may be done by several threads
   * @return the results, in the order of the items
   */
  <A, B> List<B> map(List<A> items, Function<? super A, ? extends B> work);
}
