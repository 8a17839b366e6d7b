package withers.log;

import java.util.List;

/**
 * The log: append batches, commit them with one marker, read what is committed. One interface,
 * several implementations, one contract suite. Safe for several threads.
 */
public interface EventLog extends AutoCloseable {

  /**
   * Appends a batch, durable on return and invisible until its import is committed. Batches of one
   * import and partition come in the order of their sequence; of several partitions, in any order
   * and from any thread.
   *
   * @throws IllegalStateException when the import is committed already
   */
  <E> void append(Batch<E> batch);

  /**
   * Appends batches one after another, all durable on return. For a log that syncs a disk, many at
   * once cost little more than one.
   *
   * @throws IllegalStateException when an import of theirs is committed already
   */
  default void appendAll(List<? extends Batch<?>> batches) {
    batches.forEach(this::append);
  }

  /** Batches that wait to be appended. */
  @FunctionalInterface
  interface Appending {

    /**
     * Appends them, once, as {@link #appendAll} does, but may return while they are on their way:
     * durable they are when {@link #commit} of their import returns. If they don't arrive, a later
     * call for their import says so, and it is never committed.
     */
    void append();
  }

  /** Does what of {@link #appendAll} changes nothing yet, such as encoding the events. */
  default Appending prepare(List<? extends Batch<?>> batches) {
    return () -> appendAll(batches);
  }

  /**
   * Makes an import visible, whole, durable on return.
   *
   * @throws StaleParentException when another marker of the same chain came first: nothing became
   *     visible; compare again with the log and commit anew
   */
  void commit(ImportMarker marker);

  /** What is committed now. Later commits don't change a snapshot. */
  LogSnapshot snapshot();

  /**
   * Removes batches of imports that never got a marker. Call only while nothing is importing.
   *
   * @return how many batches were removed
   */
  long sweep();

  @Override
  void close();
}
