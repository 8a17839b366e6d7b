/**
 * Who is who: contacts made comparable, the verdict on two of them, and which contacts are
 * organisations of the directory. The sentences stand in docs/findings.md.
 */
@NullMarked
package withers.contacts;

import org.jspecify.annotations.NullMarked;
