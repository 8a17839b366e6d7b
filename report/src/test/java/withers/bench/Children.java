package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Processor time of the processes that this one started and that have ended, as Linux tells it. */
final class Children {

  private static final Path STAT = Path.of("/proc/self/stat");

  /** After the name in brackets, which may hold blanks: fields 16 and 17 of proc(5). */
  private static final int USER = 13;

  private static final int SYSTEM = 14;

  /** Linux counts in hundredths of a second there, whatever the machine. */
  private static final long NANOS_A_TICK = 10_000_000;

  private Children() {}

  /** In nanoseconds; 0 on systems that don't tell. */
  static long processorNanos() throws IOException {
    return Files.exists(STAT) ? nanos(Files.readString(STAT)) : 0;
  }

  static long nanos(String stat) {
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Long.parseLong(fields[USER]) + Long.parseLong(fields[SYSTEM])) * NANOS_A_TICK;
  }
}
