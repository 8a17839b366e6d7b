/** The event log on Apache Kafka: streams as topics, made visible by markers as everywhere. */
@NullMarked
package withers.log.kafka;

import org.jspecify.annotations.NullMarked;
