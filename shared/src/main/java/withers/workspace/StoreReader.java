package withers.workspace;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;
import withers.workspace.MailServer.Login;
import withers.yaml.Fields;

/** Reads {@code schedule-store} of {@code withers.yaml}. */
final class StoreReader {
  private static final int LAST_PORT = 65_535;
  private static final int SHORTEST_LEASE = 2;
  private static final int LONGEST_LEASE = 3600;
  private static final Pattern HOST = Pattern.compile("[A-Za-z0-9:][A-Za-z0-9.:-]{0,252}");
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9_-]{1,63}");

  /** How a connection is protected. */
  enum Security {
    TLS,
    NONE
  }

  private StoreReader() {}

  static StoreSettings read(Fields fields) {
    Security security = fields.choice("security", Security.TLS);
    return new StoreSettings(
        fields
            .optionalValue("host", text -> matching(HOST, text, "a server's name"))
            .orElse("localhost"),
        fields.wholeNumber("port", StoreSettings.DEFAULT_PORT, 1, LAST_PORT),
        fields
            .optionalValue("database", text -> matching(NAME, text, "a database's name"))
            .orElse("withers"),
        login(fields),
        security == Security.TLS,
        certificates(fields, security),
        Duration.ofSeconds(
            fields.wholeNumber(
                "lease-seconds",
                StoreSettings.DEFAULT_LEASE_SECONDS,
                SHORTEST_LEASE,
                LONGEST_LEASE)));
  }

  private static Optional<Login> login(Fields fields) {
    Optional<String> user = fields.optionalText("user");
    Optional<String> file = fields.optionalText("password-file");
    if (user.isPresent() != file.isPresent()) {
      fields.problem(
          user.isPresent() ? "user" : "password-file",
          "Expected a user with a password-file, but found one of the two",
          "give both, or neither for a server that asks for none");
    }
    return user.flatMap(name -> file.map(path -> new Login(name, path)));
  }

  private static Optional<String> certificates(Fields fields, Security security) {
    Optional<String> file = fields.optionalText("certificates");
    if (file.isPresent() && security == Security.NONE) {
      fields.problem(
          "certificates",
          "Expected certificates with security: tls only, but found them with none",
          "say security: tls, or leave them out");
    }
    return file;
  }

  private static String matching(Pattern pattern, String text, String what) {
    if (pattern.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException("Expected %s, but found other characters".formatted(what));
  }
}
