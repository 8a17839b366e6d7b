package withers.ingest.inbox;

import java.time.Duration;

/** Lets time pass. */
@FunctionalInterface
public interface Waiting {

  /** Returns when this much time has passed. */
  void waitFor(Duration time);

  /** Waits by the machine's own time. */
  static Waiting sleeping() {
    return time -> {
      try {
        Thread.sleep(time.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException("Waiting for files to settle was interrupted", e);
      }
    };
  }
}
