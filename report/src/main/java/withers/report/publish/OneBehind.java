package withers.report.publish;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Does one thing after the other on a thread of its own, while the next is made ready: no more than
 * one is ever under way. To be used by one thread at a time. Close it, to be sure that nothing is
 * being done any more.
 */
final class OneBehind<R> implements AutoCloseable {
  private final ExecutorService thread = Executors.newSingleThreadExecutor();
  private final List<R> results = new ArrayList<>();
  private Optional<Future<R>> underWay = Optional.empty();

  /**
   * Has work begun, once what was handed over before is done.
   *
   * @throws IOException when what was handed over before failed, as it did
   */
  void handOver(Callable<R> work) throws IOException {
    settle();
    underWay = Optional.of(thread.submit(work));
  }

  /**
   * The results of all work, in its order, when it is done.
   *
   * @throws IOException when what was handed over last failed, as it did
   */
  List<R> results() throws IOException {
    settle();
    return List.copyOf(results);
  }

  private void settle() throws IOException {
    if (underWay.isPresent()) {
      Future<R> last = underWay.get();
      underWay = Optional.empty();
      results.add(result(last));
    }
  }

  private R result(Future<R> work) throws IOException {
    try {
      return work.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Making the lists was interrupted", e);
    } catch (ExecutionException e) {
      throw failure(e);
    }
  }

  /** What the work threw. */
  private static IOException failure(ExecutionException failed) {
    Throwable cause = failed.getCause();
    if (cause instanceof RuntimeException thrown) {
      throw thrown;
    }
    if (cause instanceof Error thrown) {
      throw thrown;
    }
    return cause instanceof IOException thrown ? thrown : new IOException(cause);
  }

  @Override
  public void close() {
    thread.shutdown();
    boolean wasInterrupted = false;
    while (!thread.isTerminated()) {
      try {
        thread.awaitTermination(1, TimeUnit.MINUTES);
      } catch (InterruptedException e) {
        wasInterrupted = true;
      }
    }
    if (wasInterrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
