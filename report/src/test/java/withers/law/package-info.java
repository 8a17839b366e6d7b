/** The law: findings depend on the set of exports, from the files on. */
package withers.law;
