package withers.bench;

import java.util.Map;

/** What a stage does, and what it counts. */
@FunctionalInterface
interface Work {

  /** A count: the peak of memory of other processes that did the work. */
  String PEAK = "peak-bytes";

  /**
   * What was done.
   *
   * @param count what the stage got through, in its unit
   * @param counts what else it counted, by name
   */
  record Done(long count, Map<String, Long> counts) {}

  /** Does the work on these files, timing what the stage is about and nothing else. */
  Done run(BenchWorld world, Stopwatch watch) throws Exception;
}
