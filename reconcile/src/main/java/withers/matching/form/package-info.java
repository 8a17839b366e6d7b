/**
 * The normal form of a contact: what it says, in the shape in which contacts are compared, and how
 * it is made. Nothing here judges. What is known of names, titles, streets and legal forms stands
 * in the resources of this package.
 */
@NullMarked
package withers.matching.form;

import org.jspecify.annotations.NullMarked;
