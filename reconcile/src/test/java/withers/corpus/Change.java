package withers.corpus;

/** One thing that people and clerks do to a record. */
interface Change {

  /** The changed record, or the same one when there is nothing to do it to. */
  Entry apply(Entry entry, Dice dice);
}
