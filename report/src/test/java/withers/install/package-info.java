/** The zip, unpacked and used as somebody would who has nothing else. */
package withers.install;
