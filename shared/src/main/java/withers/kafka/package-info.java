/**
 * What the parts on Apache Kafka share: how a broker is reached, topics, and words for troubles.
 */
@NullMarked
package withers.kafka;

import org.jspecify.annotations.NullMarked;
