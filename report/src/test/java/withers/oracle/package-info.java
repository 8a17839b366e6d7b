/**
 * A second, independent reconciliation: the exports as plain tables in a database, and the kinds as
 * SQL from the sentences of {@code docs/findings.md}. It shares nothing with the one that it judges
 * but the verdict on two contacts; see {@code docs/oracle.md}.
 */
package withers.oracle;
