package withers.report.send;

import java.time.Duration;

/** Lets time pass. */
@FunctionalInterface
public interface Pause {

  /** Returns when it has passed. */
  void of(Duration time);

  /** In real time. */
  static void real(Duration time) {
    try {
      Thread.sleep(time.toMillis());
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted while waiting", interrupted);
    }
  }
}
