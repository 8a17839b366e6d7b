package withers.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/**
 * What a run ran on.
 *
 * @param loadAverage of the last minute before the run, over the processors: what else was running;
 *     negative when the system does not tell
 */
record Machine(int processors, long memoryBytes, String java, String system, double loadAverage) {

  static Machine here() {
    OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    return new Machine(
        system.getAvailableProcessors(),
        system.getTotalMemorySize(),
        Runtime.version().toString(),
        system.getName() + " " + system.getArch(),
        system.getSystemLoadAverage());
  }
}
