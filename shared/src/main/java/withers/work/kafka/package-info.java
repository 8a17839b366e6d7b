/** Work shared over Apache Kafka: who does what, and who takes over, is its consumer group's. */
@NullMarked
package withers.work.kafka;

import org.jspecify.annotations.NullMarked;
