package withers.waiting;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;

/**
 * How a thread waits for what another one does, and what it says when that comes to nothing.
 *
 * @param interrupted what is said when the thread that waits is interrupted
 * @param failed what is said when the work threw something that can't be thrown on as it is
 */
public record Waiting(String interrupted, String failed) {

  /**
   * Waits until work is done.
   *
   * @return what came of it
   * @throws RuntimeException what the work threw, if that was one
   * @throws IllegalStateException when it threw anything else, which is the cause; or when the
   *     thread that waits is interrupted, which it still is afterwards
   */
  public <R> R on(Future<R> work) {
    try {
      return work.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(interrupted, e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException thrown) {
        throw thrown;
      }
      throw new IllegalStateException(failed, e.getCause());
    }
  }
}
