package withers.bench;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.CRC32C;
import withers.finding.Finding;

/** A number for findings in their order, the same only for the same ones. */
final class Digest {

  private Digest() {}

  static long of(List<Finding> findings) {
    CRC32C checksum = new CRC32C();
    for (Finding finding : findings) {
      checksum.update(finding.toString().getBytes(StandardCharsets.UTF_8));
    }
    return checksum.getValue();
  }
}
