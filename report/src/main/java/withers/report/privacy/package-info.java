/** What is held on a person, where copies of it lie, and how it is forgotten. */
@NullMarked
package withers.report.privacy;

import org.jspecify.annotations.NullMarked;
