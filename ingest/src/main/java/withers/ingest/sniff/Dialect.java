package withers.ingest.sniff;

/** How cells are told apart. */
public record Dialect(Delimiter delimiter, Quoting quoting) {}
