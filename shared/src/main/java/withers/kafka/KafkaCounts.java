package withers.kafka;

import java.util.concurrent.atomic.LongAdder;

/**
 * What this process has to do with Kafka, in numbers, for whoever watches it. Safe for several
 * threads.
 */
public final class KafkaCounts {
  private static final KafkaCounts HERE = new KafkaCounts();

  private final LongAdder read = new LongAdder();
  private final LongAdder written = new LongAdder();
  private final LongAdder aborted = new LongAdder();
  private final LongAdder behind = new LongAdder();

  private KafkaCounts() {}

  public static KafkaCounts ofThisProcess() {
    return HERE;
  }

  /** Bytes of all records that were read, uncompressed. */
  public long bytesRead() {
    return read.sum();
  }

  /** Bytes of all records that were handed over to be sent, before they are compressed. */
  public long bytesWritten() {
    return written.sum();
  }

  /** Transactions that were begun and not committed, because another program was first. */
  public long aborts() {
    return aborted.sum();
  }

  /** Offsets between where readers of the log are and where they will stop; 0 when nobody reads. */
  public long lag() {
    return behind.sum();
  }

  void read(long bytes) {
    read.add(bytes);
  }

  void written(long bytes) {
    written.add(bytes);
  }

  /** A transaction came to nothing. */
  public void aborted() {
    aborted.increment();
  }

  /** So many more offsets are to be read; less than 0 when they were. */
  public void behind(long offsets) {
    behind.add(offsets);
  }
}
