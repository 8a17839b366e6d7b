/**
 * Why a follow-up is there: the rule's sentence, what it rests on, and what would change it. Told
 * from a run and the log; nothing is judged anew, and nobody's details are shown to others.
 */
@NullMarked
package withers.explain;

import org.jspecify.annotations.NullMarked;
