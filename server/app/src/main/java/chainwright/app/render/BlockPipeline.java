package chainwright.app.render;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Works that are done block by block, each on one block after the other, as many at once as there
 * are threads. A work gets a block when all that it comes after are through with it.
 *
 * <p>Each work sees its blocks in order and no two threads at once, so that what comes out does not
 * depend on the number of threads. No work is more than {@value #DEPTH} blocks ahead of one that
 * comes after it, so that as many slots a work are enough for what it hands on.
 */
final class BlockPipeline {

  /** How many blocks a work may be ahead, and how many slots it needs. */
  static final int DEPTH = 4;

  /** What is done to a block. */
  @FunctionalInterface
  interface Work {

    /** Works on a block; {@code block % DEPTH} is the slot of what is handed on. */
    void run(long block) throws IOException;
  }

  private static final class Station {
    private final Work work;
    private final List<Station> before;
    private final List<Station> behind = new ArrayList<>();
    private long done;
    private boolean isRunning;

    Station(Work work, List<Station> before) {
      this.work = work;
      this.before = before;
    }

    /** Asks whether the next block is there, and its slot free again. */
    boolean isReady() {
      for (Station one : before) {
        if (one.done <= done) {
          return false;
        }
      }
      for (Station one : behind) {
        if (one.done <= done - DEPTH) {
          return false;
        }
      }
      return !isRunning;
    }
  }

  private final List<Station> stations = new ArrayList<>();
  private long blocks;
  private @Nullable Throwable trouble;

  /**
   * Adds a work.
   *
   * @param work the work
   * @param after the numbers of those that it comes after
   * @return its number
   */
  int add(Work work, List<Integer> after) {
    List<Station> before = after.stream().map(stations::get).toList();
    Station station = new Station(work, before);
    before.forEach(one -> one.behind.add(station));
    stations.add(station);
    return stations.size() - 1;
  }

  /**
   * Does all works on all blocks.
   *
   * @param blockCount how many blocks
   * @param threads how many threads, ≥ 1; the caller's is one of them
   * @throws IOException the first that a work throws; the others have stopped then
   */
  void run(long blockCount, int threads) throws IOException {
    blocks = blockCount;
    List<Thread> others = new ArrayList<>();
    for (int i = 1; i < Math.min(threads, stations.size()); i++) {
      Thread thread = new Thread(this::workOn, "render-" + i);
      thread.setDaemon(true);
      thread.start();
      others.add(thread);
    }
    workOn();
    for (Thread thread : others) {
      joinFully(thread);
    }
    Throwable first = trouble;
    if (first instanceof IOException io) {
      throw io;
    }
    if (first instanceof RuntimeException fault) {
      throw fault;
    }
    if (first instanceof Error error) {
      throw error;
    }
  }

  private static void joinFully(Thread thread) {
    boolean isInterrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        isInterrupted = true;
      }
    }
    if (isInterrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void workOn() {
    Station next = next(null);
    while (next != null) {
      Throwable fault = null;
      try {
        next.work.run(next.done);
      } catch (IOException | RuntimeException | Error e) {
        fault = e;
      }
      if (fault != null) {
        fail(fault);
      }
      next = next(next);
    }
  }

  private synchronized void fail(Throwable fault) {
    if (trouble == null) {
      trouble = fault;
    }
  }

  /** Ends a work's block and returns the work to do next; waits for one; null at the end. */
  private synchronized @Nullable Station next(@Nullable Station ended) {
    if (ended != null) {
      ended.done++;
      ended.isRunning = false;
      notifyAll();
    }
    while (trouble == null && isUnfinished()) {
      Station ready = ready();
      if (ready != null) {
        ready.isRunning = true;
        return ready;
      }
      try {
        wait();
      } catch (InterruptedException e) {
        trouble = new IOException("the render was interrupted", e);
      }
    }
    notifyAll();
    return null;
  }

  private boolean isUnfinished() {
    for (Station one : stations) {
      if (one.done < blocks) {
        return true;
      }
    }
    return false;
  }

  /** The work that is ready and furthest behind. */
  private @Nullable Station ready() {
    Station chosen = null;
    for (Station one : stations) {
      boolean isFurther = chosen == null || one.done < chosen.done;
      if (isFurther && one.done < blocks && one.isReady()) {
        chosen = one;
      }
    }
    return chosen;
  }
}
