package withers.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Optional;
import java.util.concurrent.Callable;

/**
 * Adds up the time of pieces of work: on the wall, and on all processors of this process, so that a
 * busy machine can be told from slow work.
 */
final class Stopwatch {

  private static final double NANOS = 1e9;
  private static final OperatingSystemMXBean SYSTEM =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private long wall;
  private long processors;
  private Optional<JvmTime> ofJvm = Optional.empty();

  <T> T time(Callable<T> work) throws Exception {
    Optional<JvmTime> jvmBefore = JvmTime.now();
    long processorsBefore = SYSTEM.getProcessCpuTime();
    long wallBefore = System.nanoTime();
    try {
      return work.call();
    } finally {
      wall += System.nanoTime() - wallBefore;
      processors += SYSTEM.getProcessCpuTime() - processorsBefore;
      jvmBefore.ifPresent(before -> add(JvmTime.now().orElseThrow().minus(before)));
    }
  }

  private void add(JvmTime more) {
    ofJvm = Optional.of(ofJvm.map(more::plus).orElse(more));
  }

  /** The same for work that waits for processes of its own: their processor time counts. */
  <T> T timeChild(Callable<T> work) throws Exception {
    long before = Children.processorNanos();
    long wallBefore = System.nanoTime();
    try {
      return work.call();
    } finally {
      wall += System.nanoTime() - wallBefore;
      processors += Children.processorNanos() - before;
    }
  }

  /** What another one measured. */
  void add(Stopwatch other) {
    wall += other.wall;
    processors += other.processors;
    other.ofJvm.ifPresent(this::add);
  }

  double seconds() {
    return wall / NANOS;
  }

  double processorSeconds() {
    return processors / NANOS;
  }

  /** What of it this JVM took for itself; empty where the system doesn't tell, and for children. */
  Optional<JvmTime> ofJvm() {
    return ofJvm;
  }
}
