package withers.ingest.known;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;

/**
 * What stands before the first row of a file: its header and whatever comes with it.
 *
 * @param length in bytes
 * @param line on which the first row starts
 * @param first half of a hash of the bytes
 * @param second half of that hash
 */
record FileStart(int length, long line, long first, long second) {

  private static final int LONGEST = 1 << 16;

  /**
   * Reads the start of a file.
   *
   * @param length how much of it to read
   * @throws UnrecognisableException when that is more than a header can be, or than there is
   */
  static FileStart of(InputStream in, long length, long line, RecordHash hash) throws IOException {
    return of(bytes(in, length), line, hash);
  }

  private static byte[] bytes(InputStream in, long length) throws IOException {
    if (length > LONGEST) {
      throw new UnrecognisableException("a header of more than %,d bytes".formatted(LONGEST));
    }
    byte[] bytes = in.readNBytes((int) length);
    if (bytes.length < length) {
      throw new UnrecognisableException("a file that is shorter than its header");
    }
    return bytes;
  }

  private static FileStart of(byte[] bytes, long line, RecordHash hash) {
    hash.hash(bytes, 0, bytes.length);
    return new FileStart(bytes.length, line, hash.first(), hash.second());
  }

  /**
   * Passes over the start of another file.
   *
   * @return its bytes
   * @throws UnrecognisableException when it is another one, or has another end of line
   */
  byte[] require(PushbackInputStream in, RecordHash hash) throws IOException {
    byte[] bytes = bytes(in, length);
    boolean isThis = of(bytes, line, hash).equals(this);
    int next = in.read();
    if (!isThis || next == '\n') {
      throw new UnrecognisableException("another header");
    }
    if (next >= 0) {
      in.unread(next);
    }
    return bytes;
  }

  void write(DataOutput out) throws IOException {
    out.writeInt(length);
    out.writeLong(line);
    out.writeLong(first);
    out.writeLong(second);
  }

  static FileStart read(DataInput in) throws IOException {
    return new FileStart(in.readInt(), in.readLong(), in.readLong(), in.readLong());
  }
}
