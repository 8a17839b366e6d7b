package withers.codec.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import withers.waiting.Waiting;

/**
 * Makes values of what was read on a thread of its own, in order, while more is read. No more than
 * two batches are held at a time. To be used by one thread, which sees what was made once {@link
 * #finish} has returned.
 */
final class Making implements AutoCloseable {
  /** Enough that handing over costs nothing, and few enough to take little memory. */
  static final int BATCH = 128;

  private static final Waiting WAITING =
      new Waiting("Reading a run was interrupted", "A part of a run could not be made");

  private final ExecutorService thread = Executors.newSingleThreadExecutor();
  private List<Runnable> next = new ArrayList<>(BATCH);
  private Optional<Future<?>> underWay = Optional.empty();

  /**
   * Has something made, at some time before {@link #finish} returns.
   *
   * @throws RuntimeException what was thrown by something that was added before
   */
  void add(Runnable making) {
    next.add(making);
    if (next.size() == BATCH) {
      handOver();
    }
  }

  /**
   * Waits until all is made.
   *
   * @throws RuntimeException what was thrown by something that was added
   */
  void finish() {
    handOver();
    settle();
  }

  private void handOver() {
    settle();
    List<Runnable> batch = next;
    next = new ArrayList<>(BATCH);
    underWay = Optional.of(thread.submit(() -> batch.forEach(Runnable::run)));
  }

  private void settle() {
    if (underWay.isPresent()) {
      Future<?> last = underWay.get();
      underWay = Optional.empty();
      WAITING.on(last);
    }
  }

  /** Ends the thread; what is still under way then is of no use to anybody. */
  @Override
  public void close() {
    thread.shutdown();
  }
}
