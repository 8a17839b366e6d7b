/**
 * What each organisation is told: its follow-ups in plain words, its own clients in full, everybody
 * else masked. Pure: a run, the directory and the vault in, lists out.
 */
@NullMarked
package withers.report.list;

import org.jspecify.annotations.NullMarked;
