package withers.report.demo;

/**
 * Where the demo's log is on Apache Kafka.
 *
 * @param bootstrap a broker, HOST:PORT
 * @param topicPrefix of topics that are the demo's alone
 */
public record KafkaOfDemo(String bootstrap, String topicPrefix) {

  /** As {@code withers.yaml} states it. */
  String settings() {
    return """

        # Where the events go (docs/kafka.md).
        log:
          kafka:
            bootstrap-servers: %s
            topic-prefix: %s
            security: none
        """
        .formatted(quoted(bootstrap), quoted(topicPrefix));
  }

  private static String quoted(String text) {
    return "'" + text.replaceAll("\\p{Cntrl}", " ").replace("'", "''") + "'";
  }
}
