package withers.ingest.pack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tells apart what comes in a compound file: an old spreadsheet, or a new one with a password. */
final class CompoundFile {

  private static final int SECTOR = 512;

  /** The name of the stream of encrypted bytes ([MS-OFFCRYPTO], 2.3.4.4), as a directory has it. */
  private static final String ENCRYPTED =
      new String(
          "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE), StandardCharsets.ISO_8859_1);

  private CompoundFile() {}

  /** Whether it holds something that needs a password. */
  static boolean isEncrypted(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      for (byte[] sector = in.readNBytes(SECTOR);
          sector.length > 0;
          sector = in.readNBytes(SECTOR)) {
        // Names stand at multiples of 128 bytes, so no sector parts one.
        if (new String(sector, StandardCharsets.ISO_8859_1).contains(ENCRYPTED)) {
          return true;
        }
      }
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
