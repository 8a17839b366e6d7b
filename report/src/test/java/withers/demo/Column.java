package withers.demo;

import java.util.function.Function;

/**
 * A column of a source's files.
 *
 * @param header as that source writes it
 * @param cell what a row has there, before quoting
 */
record Column(String header, Function<Row, String> cell) {}
