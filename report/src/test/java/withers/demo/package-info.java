/**
 * The demo scenario: an invented coast whose organisations keep records of invented animals, and
 * the exports that they send each month. Everything is a pure function of a seed.
 */
package withers.demo;
