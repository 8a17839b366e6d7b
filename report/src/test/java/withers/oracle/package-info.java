/**
 * A second, independent reconciliation: the exports as plain tables in a database, and the kinds as
 * SQL from the sentences of {@code docs/findings.md}. It shares no code with the one that it
 * judges; see {@code docs/oracle.md}.
 */
package withers.oracle;
