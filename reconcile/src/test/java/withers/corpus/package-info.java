/**
 * Pairs of contacts of which is known who is who, made to judge whatever compares contacts. Nothing
 * here knows how contacts are compared. All people, places and addresses are invented; see
 * docs/matching.md.
 */
@NullMarked
package withers.corpus;

import org.jspecify.annotations.NullMarked;
