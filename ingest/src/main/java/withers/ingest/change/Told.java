package withers.ingest.change;

/**
 * A version and the export date at which the log holds it.
 *
 * @param day export date, as a day of the epoch
 */
record Told(int day, Version version) {}
