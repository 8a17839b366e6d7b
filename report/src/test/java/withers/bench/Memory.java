package withers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

/** The most memory that this process has had resident at once, as Linux tells it. */
final class Memory {

  private static final Path STATUS = Path.of("/proc/self/status");
  private static final String PEAK = "VmHWM:";
  private static final long KIBIBYTE = 1024;

  private Memory() {}

  /** In bytes; empty on systems that don't tell. */
  static OptionalLong peak() throws IOException {
    return Files.exists(STATUS) ? peak(Files.readAllLines(STATUS)) : OptionalLong.empty();
  }

  /** Of another process; empty once it has ended. */
  static OptionalLong peakOf(Process process) {
    try {
      return peak(Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")));
    } catch (IOException ended) {
      return OptionalLong.empty();
    }
  }

  static OptionalLong peak(List<String> status) {
    return status.stream()
        .filter(line -> line.startsWith(PEAK))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) * KIBIBYTE)
        .findFirst();
  }
}
