/** Small invented worlds for tests, written as lines that a registrar could read. */
package withers.world;
