package withers.workspace;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.kafka.KafkaSettings;
import withers.kafka.KafkaSettings.Login;
import withers.kafka.KafkaSettings.Mechanism;
import withers.kafka.KafkaSettings.Security;
import withers.yaml.Fields;

/** Reads {@code log} of {@code withers.yaml}. */
final class KafkaSettingsReader {
  private static final int MOST_REPLICAS = 15;
  private static final int LAST_PORT = 65_535;
  private static final Pattern SERVER =
      Pattern.compile("([A-Za-z0-9.-]{1,253}|\\[[0-9a-fA-F:.]{2,45}]):([0-9]{1,5})");

  /** What Kafka allows in the name of a topic, short enough for what we add. */
  private static final Pattern PREFIX = Pattern.compile("[A-Za-z0-9._-]{1,200}");

  private KafkaSettingsReader() {}

  /** Empty for the embedded log. */
  static Optional<KafkaSettings> log(Fields fields) {
    return fields.map("kafka", KafkaSettingsReader::kafka);
  }

  private static KafkaSettings kafka(Fields fields) {
    fields.require("bootstrap-servers");
    Security security = fields.choice("security", Security.TLS);
    return new KafkaSettings(
        fields.list("bootstrap-servers", KafkaSettingsReader::server),
        fields
            .optionalValue("topic-prefix", KafkaSettingsReader::prefix)
            .orElse(KafkaSettings.DEFAULT_PREFIX),
        replication(fields),
        security,
        login(fields),
        onlyWithTls(fields, security, "certificates"),
        onlyWithTls(fields, security, "client-certificate"));
  }

  private static Optional<Integer> replication(Fields fields) {
    int copies = fields.wholeNumber("replication", 0, 1, MOST_REPLICAS);
    return Optional.of(copies).filter(stated -> stated > 0);
  }

  private static Optional<String> onlyWithTls(Fields fields, Security security, String key) {
    Optional<String> file = fields.optionalText(key);
    if (file.isPresent() && security == Security.NONE) {
      fields.problem(
          key,
          "Expected certificates with security: tls only, but found them with none",
          "say security: tls, or leave them out");
    }
    return file;
  }

  private static Optional<Login> login(Fields fields) {
    Optional<String> user = fields.optionalText("user");
    Optional<String> file = fields.optionalText("password-file");
    Mechanism mechanism = fields.choice("mechanism", Mechanism.SCRAM_SHA_512);
    if (user.isPresent() != file.isPresent()) {
      fields.problem(
          user.isPresent() ? "user" : "password-file",
          "Expected a user with a password-file, but found one of the two",
          "give both, or neither for a broker that asks for none");
    }
    return user.flatMap(name -> file.map(path -> new Login(name, path, mechanism)));
  }

  private static String server(String text) {
    Matcher matcher = SERVER.matcher(text);
    if (matcher.matches() && isPort(matcher.group(2))) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected a broker as HOST:PORT such as kafka.example.org:9093, but found \"%s\""
            .formatted(text));
  }

  private static boolean isPort(String digits) {
    int port = Integer.parseInt(digits);
    return port > 0 && port <= LAST_PORT;
  }

  private static String prefix(String text) {
    if (PREFIX.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected 1 to 200 letters, digits, dots, dashes or underscores, but found \"%s\""
            .formatted(text));
  }
}
