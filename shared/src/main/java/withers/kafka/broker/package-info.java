/**
 * Brokers of Apache Kafka on this machine, each in a JVM of its own: for the demo and for tests.
 */
@NullMarked
package withers.kafka.broker;

import org.jspecify.annotations.NullMarked;
