package withers.kafka;

import java.util.List;
import java.util.Optional;

/**
 * Where a Kafka cluster is and how to sign in. Files are named as the workspace names them.
 *
 * @param bootstrapServers brokers to begin with, each HOST:PORT; at least one
 * @param topicPrefix what the names of all topics begin with, before a dot
 * @param replication copies of each partition of topics that are made; empty for the broker's own
 *     default
 * @param security how connections are protected
 * @param login how to sign in; empty for a broker that asks for no name
 * @param certificates names a PEM file with the certificates that are trusted instead of Java's own
 * @param clientCertificate names a PEM file with a key, not encrypted, and its certificate, for a
 *     broker that asks for one
 */
public record KafkaSettings(
    List<String> bootstrapServers,
    String topicPrefix,
    Optional<Integer> replication,
    Security security,
    Optional<Login> login,
    Optional<String> certificates,
    Optional<String> clientCertificate) {

  public static final String DEFAULT_PREFIX = "withers";

  /** How a connection is protected. */
  public enum Security {
    TLS,
    /** Not at all: for a broker on this machine or in a network of its own. */
    NONE
  }

  /** How SCRAM (RFC 5802) hashes the password. */
  public enum Mechanism {
    SCRAM_SHA_512("SCRAM-SHA-512"),
    SCRAM_SHA_256("SCRAM-SHA-256");

    private final String wire;

    Mechanism(String wire) {
      this.wire = wire;
    }

    String wire() {
      return wire;
    }
  }

  /** A user, and the file whose first line is the password. */
  public record Login(String user, String passwordFile, Mechanism mechanism) {}

  public KafkaSettings {
    bootstrapServers = List.copyOf(bootstrapServers);
  }

  /** Those of a broker that everybody who reaches it may use. */
  public static KafkaSettings open(String bootstrapServer, String topicPrefix) {
    return new KafkaSettings(
        List.of(bootstrapServer),
        topicPrefix,
        Optional.empty(),
        Security.NONE,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The name of a topic of ours. */
  public String topic(String name) {
    return topicPrefix + "." + name;
  }

  /** The brokers as people read them. */
  public String servers() {
    return String.join(", ", bootstrapServers);
  }
}
