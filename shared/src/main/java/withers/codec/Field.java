package withers.codec;

/**
 * A field of a stored shape: its JSON name and how its value is written. Its place is its position.
 */
record Field<V>(String name, WireType<V> type) {}
