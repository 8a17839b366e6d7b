package withers.workspace;

import java.util.Optional;
import java.util.regex.Pattern;
import withers.yaml.Fields;
import withers.yaml.Values;

/**
 * Reads {@code watch} of {@code withers.yaml}.
 *
 * @param canSend whether a mail server is stated
 */
record WatchReader(boolean canSend) {
  private static final int LAST_PORT = 65_535;
  private static final Pattern ADDRESS = Pattern.compile("[A-Za-z0-9:][A-Za-z0-9.:-]{0,252}");

  WatchSettings read(Fields fields) {
    Optional<String> operator = fields.optionalValue("operator", DirectoryReader::mail);
    if (operator.isPresent() && !canSend) {
      fields.problem(
          "operator",
          "Expected a mail server to send through, but found none",
          "state it as \"mail: {server: {host: ...}}\", or leave operator out");
    }
    return new WatchSettings(
        fields.optionalValue("address", WatchReader::address).orElse(WatchSettings.LOOPBACK),
        fields.optionalValue("port", text -> Values.wholeNumber(text, 1, LAST_PORT)),
        operator);
  }

  private static String address(String text) {
    if (ADDRESS.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected an address of this machine such as 127.0.0.1, but found other characters");
  }
}
