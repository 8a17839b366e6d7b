package withers.work.kafka;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/** What a pool does for one who looks after it now and then. For one thread. */
final class SeenTo {
  private final ExecutorService pool;
  private final List<Future<?>> all = new ArrayList<>();

  SeenTo(ExecutorService pool) {
    this.pool = pool;
  }

  void add(Runnable work) {
    all.add(pool.submit(work));
  }

  boolean isEmpty() {
    return all.isEmpty();
  }

  /** Takes out what is done, and fails if that did; says whether there was any. */
  boolean look() throws ExecutionException, InterruptedException {
    int before = all.size();
    Iterator<Future<?>> rest = all.iterator();
    while (rest.hasNext()) {
      Future<?> one = rest.next();
      if (one.isDone()) {
        get(one);
        rest.remove();
      }
    }
    return all.size() < before;
  }

  /** Waits for all of it. */
  void await() throws ExecutionException, InterruptedException {
    for (Future<?> one : all) {
      get(one);
    }
    all.clear();
  }

  private static void get(Future<?> one) throws ExecutionException, InterruptedException {
    try {
      one.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException thrown) {
        throw thrown;
      }
      throw e;
    }
  }
}
