/** Scorecards as JSON: frozen for audits, and in figures for scripts. */
@NullMarked
package withers.codec.scorecard;

import org.jspecify.annotations.NullMarked;
