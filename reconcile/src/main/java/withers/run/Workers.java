package withers.run;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import withers.waiting.Waiting;

/**
 * Does the same with many things, some at a time.
 *
 * @param threads how many at a time, from 1
 */
public record Workers(int threads) {
  private static final Waiting WAITING =
      new Waiting("The run was interrupted", "A part of the run failed");

  public Workers {
    if (threads < 1) {
      throw new IllegalArgumentException("Expected at least one thread, but found " + threads);
    }
  }

  /**
   * The results in the order of the things, whichever was done first.
   *
   * @throws RuntimeException what the first thing in order that failed threw
   */
  <T, R> List<R> map(List<T> things, Function<? super T, ? extends R> work) {
    if (threads == 1) {
      return things.stream().<R>map(work).toList();
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<R>> futures = new ArrayList<>();
      things.forEach(thing -> futures.add(pool.submit(() -> work.apply(thing))));
      List<R> results = new ArrayList<>();
      for (Future<R> future : futures) {
        results.add(WAITING.on(future));
      }
      return results;
    } finally {
      pool.shutdownNow();
    }
  }
}
