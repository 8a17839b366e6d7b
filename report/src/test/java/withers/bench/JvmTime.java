package withers.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Processor time that a JVM takes for itself, as Linux tells it thread by thread. Threads that have
 * ended are not in it; on two processors neither the compilers' nor the collector's end. Nor is the
 * serial collector, which has no thread of its own.
 *
 * @param compilers seconds of its compilers
 * @param collector seconds of its garbage collector
 */
record JvmTime(double compilers, double collector) {

  private static final Path THREADS = Path.of("/proc/self/task");

  /** Not every Linux keeps count. */
  private static final Path COUNTED = Path.of("/proc/self/schedstat");

  private static final double NANOS = 1e9;

  /** Of this process until now; empty on systems that don't tell. */
  static Optional<JvmTime> now() {
    return Files.exists(COUNTED) ? Optional.of(of(threads())) : Optional.empty();
  }

  /**
   * A thread of the system.
   *
   * @param name as the system cuts it, after fifteen letters
   * @param nanos of processor time
   */
  record SystemThread(String name, long nanos) {

    /**
     * @param schedstat the file of that name: nanoseconds on a processor, waiting for one, and how
     *     often it had one
     */
    static SystemThread of(String name, String schedstat) {
      return new SystemThread(name.strip(), Long.parseLong(schedstat.split(" ", -1)[0]));
    }

    boolean isCompilers() {
      return name.startsWith("C1 Compiler") || name.startsWith("C2 Compiler");
    }

    boolean isCollectors() {
      return name.startsWith("GC Thread") || name.startsWith("G1 ");
    }
  }

  static JvmTime of(List<SystemThread> threads) {
    return new JvmTime(
        seconds(threads, SystemThread::isCompilers), seconds(threads, SystemThread::isCollectors));
  }

  private static double seconds(List<SystemThread> threads, Predicate<SystemThread> which) {
    return threads.stream().filter(which).mapToLong(SystemThread::nanos).sum() / NANOS;
  }

  private static List<SystemThread> threads() {
    try (Stream<Path> threads = Files.list(THREADS)) {
      return threads.flatMap(JvmTime::thread).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Stream<SystemThread> thread(Path thread) {
    try {
      return Stream.of(
          SystemThread.of(
              Files.readString(thread.resolve("comm")),
              Files.readString(thread.resolve("schedstat"))));
    } catch (IOException ended) {
      return Stream.empty();
    }
  }

  JvmTime plus(JvmTime other) {
    return new JvmTime(compilers + other.compilers, collector + other.collector);
  }

  JvmTime minus(JvmTime other) {
    return new JvmTime(compilers - other.compilers, collector - other.collector);
  }
}
