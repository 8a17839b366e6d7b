/**
 * What every SQLite file of the project has in common: how it is made, recognised, opened and
 * mended.
 */
@NullMarked
package withers.sqlite;

import org.jspecify.annotations.NullMarked;
