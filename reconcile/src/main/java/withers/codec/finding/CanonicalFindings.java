package withers.codec.finding;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import withers.finding.Finding;

/**
 * Findings in the form that is compared byte for byte: a line of JSON each, in their total order.
 * Places in files, imports, times of recording, contact references and names of people are left
 * out, so that equal sets of exports give equal bytes on every machine and under every vault key.
 *
 * @param text the lines, each ended by a line feed
 * @param count how many there are
 */
public record CanonicalFindings(String text, int count) {

  /**
   * The canonical form of findings.
   *
   * @param findings in their total order
   */
  public static CanonicalFindings of(List<Finding> findings) {
    return new CanonicalFindings(
        findings.stream().map(CanonicalFindings::line).collect(Collectors.joining()),
        findings.size());
  }

  private static String line(Finding finding) {
    return JsonText.of(json -> new FindingJson(json, false).write(finding)) + "\n";
  }

  /** SHA-256 (FIPS 180-4) of the text in UTF-8, as 64 hexadecimal digits. */
  public String sha256() {
    try {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
