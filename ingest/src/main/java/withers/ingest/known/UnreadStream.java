package withers.ingest.known;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Optional;

/** The start of a file and its unread records, each with an end of line. */
final class UnreadStream extends InputStream {

  private final InputStream file;
  private final Recognition recognition;
  private byte[] piece;
  private int at; // in the piece
  private long place; // in the file
  private int next;

  /**
   * A stream of what is left of a file.
   *
   * @param file from its start; closed with this one
   */
  UnreadStream(InputStream file, Recognition recognition, FileStart start) throws IOException {
    this.file = file;
    this.recognition = recognition;
    this.piece = bytes(0, start.length());
  }

  private byte[] bytes(long from, int length) throws IOException {
    file.skipNBytes(from - place);
    byte[] bytes = file.readNBytes(length);
    if (bytes.length < length) {
      throw new EOFException("Expected a file that stays as it is, but found it shorter");
    }
    place = from + length;
    return bytes;
  }

  @Override
  public int read() throws IOException {
    return hasMore() ? piece[at++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    if (length > 0 && !hasMore()) {
      return -1;
    }
    int count = Math.min(length, piece.length - at);
    System.arraycopy(piece, at, into, offset, count);
    at += count;
    return count;
  }

  private boolean hasMore() throws IOException {
    while (at == piece.length && next < recognition.unrecognised()) {
      if (recognition.isUnread(next)) {
        piece = line(next);
        at = 0;
      }
      next++;
    }
    return at < piece.length;
  }

  private byte[] line(int record) throws IOException {
    Optional<byte[]> held = recognition.bytes(record);
    byte[] bytes =
        held.isPresent()
            ? held.get()
            : bytes(recognition.offset(record), recognition.length(record));
    byte[] line = Arrays.copyOf(bytes, bytes.length + 1);
    line[bytes.length] = '\n';
    return line;
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
