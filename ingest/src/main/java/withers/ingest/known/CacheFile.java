package withers.ingest.known;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.CRC32C;
import withers.workspace.OwnerOnly;

/**
 * A file of a cache being written, from its first byte to its last. It need not be durable: what a
 * power cut leaves of it fails its checksum.
 */
final class CacheFile implements AutoCloseable {

  private static final int BUFFER = 1 << 18;

  private final FileChannel channel;
  private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER).order(ByteOrder.LITTLE_ENDIAN);
  private CRC32C checksum = new CRC32C();
  private long length;

  CacheFile(Path file) throws IOException {
    this.channel = OwnerOnly.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }

  /** Opens a file, to be read. The caller closes it. */
  static FileChannel open(Path folder, Stamp.Part part) throws IOException {
    FileChannel channel = FileChannel.open(folder.resolve(part.name()));
    if (channel.size() != part.length()) {
      channel.close();
      throw new UnrecognisableException("a cache's file of another length");
    }
    return channel;
  }

  /** The bytes of a file, as long as it is mapped. */
  static MappedByteBuffer map(Path folder, Stamp.Part part) throws IOException {
    try (FileChannel channel = open(folder, part)) {
      MappedByteBuffer bytes = channel.map(FileChannel.MapMode.READ_ONLY, 0, part.length());
      bytes.order(ByteOrder.LITTLE_ENDIAN);
      return bytes;
    }
  }

  /** Makes sure that bytes are as they were written. */
  static void require(ByteBuffer bytes, int checksum) {
    CRC32C found = new CRC32C();
    found.update(bytes);
    if ((int) found.getValue() != checksum) {
      throw new UnrecognisableException("a cache's file that fails its checksum");
    }
  }

  void putLong(long value) throws IOException {
    room(Long.BYTES).putLong(value);
  }

  void putInt(int value) throws IOException {
    room(Integer.BYTES).putInt(value);
  }

  void put(byte[] bytes) throws IOException {
    if (bytes.length > BUFFER) {
      put(ByteBuffer.wrap(bytes));
    } else {
      room(bytes.length).put(bytes);
    }
  }

  /** What is small is gathered: a call of the system for each would take longer than copying. */
  void put(ByteBuffer bytes) throws IOException {
    if (bytes.remaining() <= BUFFER / 4) {
      room(bytes.remaining()).put(bytes);
    } else {
      flush();
      write(bytes);
    }
  }

  private ByteBuffer room(int bytes) throws IOException {
    if (buffer.remaining() < bytes) {
      flush();
    }
    return buffer;
  }

  private void flush() throws IOException {
    write(buffer.flip());
    buffer.clear();
  }

  private void write(ByteBuffer bytes) throws IOException {
    length += bytes.remaining();
    checksum.update(bytes.duplicate());
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** Bytes put so far. */
  long length() {
    return length + buffer.position();
  }

  /** Starts the checksum anew from here. */
  void startChecksum() throws IOException {
    flush();
    checksum = new CRC32C();
  }

  /** CRC-32C (RFC 3720) of what was put since it was started. */
  int checksum() throws IOException {
    flush();
    return (int) checksum.getValue();
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
