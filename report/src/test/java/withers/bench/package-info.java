/**
 * The benchmark: import and replay of generated exports of a stated size, stage by stage, each in a
 * JVM of its own and beside the plainest work on the same bytes. A program, not a test of times;
 * see {@code docs/benchmarks.md}.
 */
package withers.bench;
