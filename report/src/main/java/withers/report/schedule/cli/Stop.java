package withers.report.schedule.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import withers.cli.Brake;
import withers.cli.StoppedException;

/** Whether the program is to end, and whether it has come to that. Safe for several threads. */
final class Stop implements Brake {
  private final CountDownLatch asked = new CountDownLatch(1);
  private final CountDownLatch ended = new CountDownLatch(1);

  boolean isAsked() {
    return asked.getCount() == 0;
  }

  @Override
  public void check() {
    if (isAsked()) {
      throw new StoppedException();
    }
  }

  /** Asks for the end, and waits until it is there, at most for this time. */
  void ask(Duration patience) {
    asked.countDown();
    waitFor(ended, patience);
  }

  /** Nothing is being done any more. */
  void ended() {
    ended.countDown();
  }

  /** Returns when the end is asked for. */
  void await() {
    waitFor(asked, Duration.ofDays(Short.MAX_VALUE));
  }

  /**
   * Lets time pass.
   *
   * @throws StoppedException as soon as the end is asked for
   */
  void pause(Duration time) {
    waitFor(asked, time);
    check();
  }

  private static void waitFor(CountDownLatch latch, Duration time) {
    try {
      latch.await(time.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted while waiting", e);
    }
  }
}
