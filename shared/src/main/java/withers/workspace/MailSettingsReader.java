package withers.workspace;

import java.util.Optional;
import java.util.regex.Pattern;
import withers.workspace.MailServer.Login;
import withers.workspace.MailServer.Security;
import withers.yaml.Fields;

/** Reads {@code mail} of {@code withers.yaml}. */
final class MailSettingsReader {
  private static final int LONGEST_INTERVAL = 366;
  private static final int LARGEST_KIB = 1_048_576;
  private static final int LAST_PORT = 65_535;
  private static final Pattern HOST =
      Pattern.compile("[A-Za-z0-9]([A-Za-z0-9.-]{0,252}[A-Za-z0-9])?");

  private MailSettingsReader() {}

  static MailSettings read(Fields fields) {
    return new MailSettings(
        fields.wholeNumber(
            "reminder-days", MailSettings.DEFAULT_REMINDER_DAYS, 1, LONGEST_INTERVAL),
        fields.choice("details", MailSettings.Details.INCLUDED),
        fields.choice("overview", MailSettings.Overview.MAILED),
        fields.wholeNumber("largest-kib", MailSettings.DEFAULT_LARGEST_KIB, 1, LARGEST_KIB),
        fields.map("server", MailSettingsReader::server));
  }

  private static MailServer server(Fields fields) {
    Security security = fields.choice("security", Security.STARTTLS);
    int usual = security == Security.TLS ? MailServer.TLS_PORT : MailServer.STARTTLS_PORT;
    return new MailServer(
        fields.value("host", MailSettingsReader::host, ""),
        fields.wholeNumber("port", usual, 1, LAST_PORT),
        security,
        login(fields, security),
        fields.optionalText("certificates"));
  }

  private static Optional<Login> login(Fields fields, Security security) {
    Optional<String> user = fields.optionalText("user");
    Optional<String> file = fields.optionalText("password-file");
    if (user.isPresent() != file.isPresent()) {
      fields.problem(
          user.isPresent() ? "user" : "password-file",
          "Expected a user with a password-file, but found one of the two",
          "give both, or neither for a server that asks for none");
    }
    if (user.isPresent() && security == Security.NONE) {
      fields.problem(
          "security",
          "Expected starttls or tls where there is a user, but found none",
          "the password would go out for all to read");
    }
    return user.flatMap(name -> file.map(path -> new Login(name, path)));
  }

  private static String host(String text) {
    if (HOST.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected the name of a mail server such as smtp.example.org, but found other characters");
  }
}
