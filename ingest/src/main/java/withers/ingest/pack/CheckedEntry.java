package withers.ingest.pack;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.ZipException;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.InputStreamStatistics;

/** An entry's bytes, held against the length and the checksum that its archive states. */
final class CheckedEntry extends InputStream implements InputStreamStatistics {

  private final ZipArchiveEntry entry;
  private final InputStream in;
  private final CRC32 crc = new CRC32();
  private long bytes;

  CheckedEntry(ZipFile zip, ZipArchiveEntry entry) throws IOException {
    this.entry = entry;
    this.in = zip.getInputStream(entry);
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int read = in.read(buffer, offset, length);
    if (read >= 0) {
      crc.update(buffer, offset, read);
      bytes += read;
    }
    if (bytes > entry.getSize() || read < 0 && !isWhole()) {
      throw new ZipException("Length or checksum is not what the archive states");
    }
    return read;
  }

  private boolean isWhole() {
    return bytes == entry.getSize() && crc.getValue() == entry.getCrc();
  }

  @Override
  public long getCompressedCount() {
    return in instanceof InputStreamStatistics packed ? packed.getCompressedCount() : bytes;
  }

  @Override
  public long getUncompressedCount() {
    return bytes;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
