package withers.contact.sqlite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;

/** The file of forms as bytes on the disk, with the two that SQLite keeps beside it. */
record FormFile(Path path) {

  // https://www.sqlite.org/fileformat2.html, "The Database Header"
  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final int HEADER = 100;
  private static final int USER_VERSION = 60;
  private static final int APPLICATION_ID = 68;

  boolean exists() {
    return Files.exists(path);
  }

  /** Whether it holds forms as this program keeps them; what does can still be damaged. */
  boolean isOurs() {
    ByteBuffer header = ByteBuffer.allocate(HEADER);
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      while (header.hasRemaining() && channel.read(header) >= 0) {}
    } catch (IOException unreadable) {
      return false;
    }
    return !header.hasRemaining()
        && Arrays.equals(MAGIC, Arrays.copyOf(header.array(), MAGIC.length))
        && header.getInt(USER_VERSION) == FormSchema.VERSION
        && header.getInt(APPLICATION_ID) == FormSchema.APPLICATION_ID;
  }

  /** Overwrites everything with zeros, and deletes it: people's details are in there. */
  void erase() {
    try {
      for (String end : List.of("", "-wal", "-shm")) {
        erase(path.resolveSibling(path.getFileName() + end));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void erase(Path file) throws IOException {
    if (Files.isRegularFile(file)) {
      try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
        zeros(channel);
        channel.force(true);
      }
    }
    Files.deleteIfExists(file);
  }

  private static void zeros(FileChannel channel) throws IOException {
    byte[] zeros = new byte[1 << 16];
    for (long left = channel.size(); left > 0; ) {
      left -= channel.write(ByteBuffer.wrap(zeros, 0, (int) Math.min(left, zeros.length)));
    }
  }
}
