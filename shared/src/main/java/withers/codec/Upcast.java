package withers.codec;

/** Lifts the values of a stored version of a shape to those of the next version. */
@FunctionalInterface
interface Upcast {
  Values lift(Values older);
}
