/** Where records come from: sources, what kind of export they send, and what it covers. */
@NullMarked
package withers.source;

import org.jspecify.annotations.NullMarked;
