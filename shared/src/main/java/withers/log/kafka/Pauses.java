package withers.log.kafka;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Waits of a size that nobody notices. */
final class Pauses {
  private static final long LITTLE_MILLIS = 5;

  private Pauses() {}

  static void little() {
    millis(LITTLE_MILLIS);
  }

  static void millis(long millis) {
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(millis));
  }
}
