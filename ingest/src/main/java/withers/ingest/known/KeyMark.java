package withers.ingest.known;

import java.util.OptionalInt;

/**
 * What is to be known of a key once a row of it was read.
 *
 * @param hash of the key, not 0
 * @param number of the record that has been known under it; empty for a new one
 */
public record KeyMark(long hash, OptionalInt number) {}
