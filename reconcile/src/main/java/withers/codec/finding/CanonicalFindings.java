package withers.codec.finding;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import withers.finding.Finding;
import withers.packed.LazyList;

/**
 * Findings in the form that is compared byte for byte: a line of JSON each, in their total order.
 * Places in files, imports, times of recording, contact references and names of people are left
 * out, so that equal sets of exports give equal bytes on every machine and under every vault key.
 *
 * @param findings in their total order
 * @param sha256 SHA-256 (FIPS 180-4) of the lines in UTF-8, as 64 hexadecimal digits
 */
public record CanonicalFindings(List<Finding> findings, String sha256) {

  /**
   * The canonical form of findings.
   *
   * @param findings in their total order
   */
  public static CanonicalFindings of(List<Finding> findings) {
    return of(findings, OutputStream.nullOutputStream(), Pieces.ALONE);
  }

  /**
   * The canonical form of findings, written meanwhile: a line each, ended by a line feed. The
   * stream stays open.
   *
   * @param findings in their total order; safe for several threads
   * @throws java.io.UncheckedIOException when the stream fails
   */
  public static CanonicalFindings of(List<Finding> findings, OutputStream out, Pieces pieces) {
    MessageDigest digest = digest();
    write(findings, new DigestOutputStream(out, digest), pieces);
    return new CanonicalFindings(
        LazyList.copyOf(findings), HexFormat.of().formatHex(digest.digest()));
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  private static void write(List<Finding> findings, OutputStream out, Pieces pieces) {
    JsonText.lines(out, findings, pieces, json -> new FindingJson(json, false)::write);
  }

  /** How many lines there are. */
  public int count() {
    return findings.size();
  }

  /** The lines. */
  public String text() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    write(findings, out, Pieces.ALONE);
    return out.toString(StandardCharsets.UTF_8);
  }
}
