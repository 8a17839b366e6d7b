package withers.ingest.receipt;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.Objects;

/**
 * What a file looks like from outside. Two that are equal are taken for one unchanged file, without
 * reading it.
 *
 * @param size in bytes
 * @param modified when it was last written to
 * @param identity which file it is, whatever its name: device and inode where the system has them,
 *     else empty
 */
public record FileState(long size, Instant modified, String identity) {

  private static final FileState NONE = new FileState(0, Instant.EPOCH, "");

  /** How a file looks now; where there is none, like an empty file of long ago. */
  public static FileState ofAny(Path file) throws IOException {
    return Files.exists(file) ? of(file) : NONE;
  }

  /** How a file looks now. */
  public static FileState of(Path file) throws IOException {
    BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
    return new FileState(
        attributes.size(),
        attributes.lastModifiedTime().toInstant(),
        Objects.toString(attributes.fileKey(), ""));
  }
}
