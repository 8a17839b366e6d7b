/**
 * Configuration files in YAML: a tree that knows its places, and a reader that collects every
 * mistake.
 */
@NullMarked
package withers.yaml;

import org.jspecify.annotations.NullMarked;
