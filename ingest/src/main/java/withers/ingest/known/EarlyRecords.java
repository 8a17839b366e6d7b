package withers.ingest.known;

import java.io.InputStream;
import java.util.Arrays;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/**
 * Records on their way from the thread that finds them to one that reads them meanwhile. Those that
 * are read look as they would in a file of them alone. More than can be held are given up, all of
 * them.
 */
public final class EarlyRecords {

  /** Waking the reader up costs more than adding a record does. */
  private static final int TOGETHER = 256;

  private static final int MOST_BYTES = 1 << 25;

  /** Records one after another, each with an end of line. */
  private static final class Load {
    private byte[] bytes;
    private int size;
    private final long[] lines = new long[TOGETHER];
    private final int[] heights = new int[TOGETHER];
    private int count;

    Load(byte[] start, int room) {
      bytes = Arrays.copyOf(start, start.length + room);
      size = start.length;
    }

    void add(byte[] from, int start, int length, long line, int height) {
      if (size + length + 1 > bytes.length) {
        bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, size + length + 1));
      }
      System.arraycopy(from, start, bytes, size, length);
      size += length;
      bytes[size++] = '\n';
      lines[count] = line;
      heights[count++] = height;
    }
  }

  private static final int ROOM = 1 << 15;
  private static final byte[] NOTHING = {};
  private static final Load END = new Load(NOTHING, 0);
  private static final Load TOO_MANY = new Load(NOTHING, 0);

  private final BlockingQueue<Load> loads = new LinkedBlockingQueue<>();
  private final long firstLine;
  private final int most;
  private Load load;
  private int count;
  private long size;

  /**
   * Nothing yet.
   *
   * @param start what stands before the first row of the file
   * @param line on which that row starts
   * @param most how many records are held
   */
  public EarlyRecords(byte[] start, long line, int most) {
    this.load = new Load(start, ROOM);
    this.firstLine = line;
    this.most = most;
  }

  /** Adds a record; call from one thread. */
  public void add(byte[] bytes, int from, int length, long line, int height) {
    count++;
    size += length;
    if (count <= most && size <= MOST_BYTES) {
      load.add(bytes, from, length, line, height);
      if (load.count == TOGETHER) {
        next();
      }
    }
  }

  private void next() {
    loads.add(load);
    load = new Load(NOTHING, ROOM);
  }

  /** Says that there are no more; from the same thread. */
  public void end() {
    next();
    loads.add(count <= most && size <= MOST_BYTES ? END : TOO_MANY);
  }

  /** What another thread reads. */
  public Reader reader() {
    return new Reader();
  }

  /** The records as a file of them alone, with its start. For one thread. */
  public final class Reader extends InputStream implements UnreadRecords {

    private final Longs lines = new Longs();
    private final Numbers heights = new Numbers();
    private Load piece = END;
    private int at;
    private boolean ended;

    /** Where the rows that are read stand in the whole file; asked while they are read. */
    public UnreadPlaces places() {
      return new UnreadPlaces(this, firstLine);
    }

    @Override
    public int read() {
      return hasMore() ? piece.bytes[at++] & 0xFF : -1;
    }

    /**
     * Waits for more when there is none yet.
     *
     * @throws UnrecognisableException when there are too many
     */
    @Override
    public int read(byte[] into, int offset, int length) {
      if (length > 0 && !hasMore()) {
        return -1;
      }
      int read = Math.min(length, piece.size - at);
      System.arraycopy(piece.bytes, at, into, offset, read);
      at += read;
      return read;
    }

    private boolean hasMore() {
      while (at == piece.size && !ended) {
        take();
      }
      return !ended;
    }

    private void take() {
      piece = await();
      at = 0;
      ended = piece == END;
      if (piece == TOO_MANY) {
        throw new UnrecognisableException("more records than are held");
      }
      for (int i = 0; i < piece.count; i++) {
        lines.add(piece.lines[i]);
        heights.add(piece.heights[i]);
      }
    }

    private Load await() {
      try {
        return loads.take();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new UnrecognisableException("a reader that was interrupted");
      }
    }

    @Override
    public int unrecognised() {
      return lines.size();
    }

    @Override
    public boolean isUnread(int record) {
      return true;
    }

    @Override
    public long line(int record) {
      return lines.get(record);
    }

    @Override
    public int height(int record) {
      return heights.get(record);
    }
  }
}
