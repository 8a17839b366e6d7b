package withers.work.kafka;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;

/** How much of a processor this thread has had since. */
final class Processor {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private final long since = THREADS.getCurrentThreadCpuTime();

  long millis() {
    return (THREADS.getCurrentThreadCpuTime() - since) / 1_000_000;
  }
}
