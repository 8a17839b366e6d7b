package withers.ingest.csv;

import withers.ingest.sniff.Dialect;

/**
 * How a file's cells are told apart and where its header stands: together with the header, the
 * character set and the profile, all that the reading of a row depends on.
 *
 * @param headerLine line of the header, from 1, by line ends whether quoted or not
 * @param spare empty cells that rows have beyond the header's, as where every row but the header
 *     ends with a delimiter; mostly 0. One row with an empty cell too many is another matter: a
 *     stray delimiter has most likely shifted its cells
 */
public record CsvLayout(Dialect dialect, long headerLine, int spare) {}
