package withers.work;

import java.util.Optional;

/** A part of some work, and the way to hand in what becomes of it: once, in one way. */
public interface Task {

  /** Names the work that it is a part of. */
  String run();

  /** What rules and configuration whoever ordered it has. */
  String rules();

  String order();

  /** From 0. */
  int part();

  /** Whether whoever ordered it still waits for it: orders outlive those who are killed. */
  boolean isAwaited();

  /**
   * Asks whoever ordered it.
   *
   * @return empty when nobody answers any more
   */
  Optional<byte[]> ask(byte[] question);

  /** Hands the result in, with the word that the part is done. */
  void deliver(byte[] result);

  /** Says that this worker can't do it. */
  void refuse();

  /** Lets it go, since nobody waits for it. */
  void drop();
}
