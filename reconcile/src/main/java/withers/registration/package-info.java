/**
 * What the registries say: live registrations, and whether a registry's silence or its word is
 * recent enough to judge by. The sentences stand in docs/findings.md.
 */
@NullMarked
package withers.registration;

import org.jspecify.annotations.NullMarked;
