/**
 * What is worth following up: one visible list of rules, each named by its kind and written after
 * its sentence in docs/findings.md.
 */
@NullMarked
package withers.rule;

import org.jspecify.annotations.NullMarked;
