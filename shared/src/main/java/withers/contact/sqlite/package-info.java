/** The contact vault in an SQLite file of its own. */
@NullMarked
package withers.contact.sqlite;

import org.jspecify.annotations.NullMarked;
