package withers.bench;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What one stage took.
 *
 * @param stage the stage's word
 * @param count what it got through, in its unit
 * @param counts what else it counted, by name
 * @param seconds on the wall, of the work alone: neither the JVM's start nor preparations
 * @param processorSeconds of all threads of the process in that time, the JVM's own among them
 * @param ofJvm what of it the JVM took for itself; empty where the system doesn't tell
 * @param peakBytes the most memory resident at once over the whole life of the stage's JVM
 */
record Measured(
    String stage,
    long count,
    Map<String, Long> counts,
    double seconds,
    double processorSeconds,
    Optional<JvmTime> ofJvm,
    OptionalLong peakBytes) {

  Measured {
    counts = Map.copyOf(counts);
  }

  /** Of two rounds of a stage the quicker; of memory the most that either took. */
  Measured least(Measured other) {
    Measured quicker = other.seconds < seconds ? other : this;
    return new Measured(
        stage,
        count,
        quicker.counts,
        quicker.seconds,
        Math.min(processorSeconds, other.processorSeconds),
        quicker.ofJvm,
        peakBytes.orElse(0) > other.peakBytes.orElse(0) ? peakBytes : other.peakBytes);
  }

  double perSecond() {
    return count / seconds;
  }

  /** One of the other counts. */
  long counted(String name) {
    Long value = counts.get(name);
    if (value == null) {
      throw new IllegalStateException("Expected %s to count %s".formatted(stage, name));
    }
    return value;
  }
}
