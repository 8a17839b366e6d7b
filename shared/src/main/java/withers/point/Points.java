package withers.point;

/**
 * Told of each point that the program comes to, before it goes on. Safe for several threads. What
 * it does costs nothing in a program that nobody observes: {@link #NONE} does nothing.
 */
@FunctionalInterface
public interface Points {

  /** Nobody observes. */
  Points NONE = point -> {};

  /** Returns when the program may go on. */
  void reached(Point point);
}
