package withers.contacts;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;

/**
 * What was told of contacts, to be kept from run to run: nothing of what they say. Safe for several
 * threads.
 */
public final class Answers {
  private final AnswerTable table;
  private final Weighings weighings;

  /** None yet. */
  public Answers() {
    this(new AnswerTable(), new Weighings());
  }

  private Answers(AnswerTable table, Weighings weighings) {
    this.table = table;
    this.weighings = weighings;
  }

  AnswerTable table() {
    return table;
  }

  Weighings weighings() {
    return weighings;
  }

  /** How many were added since they were read. */
  public long added() {
    return table.added() + weighings.added();
  }

  /** Writes them all. */
  public void write(DataOutputStream out) throws IOException {
    byte[] weighed = weighings.bytes();
    out.writeInt(weighed.length);
    out.write(weighed);
    table.write(out);
  }

  /** The bytes of answers, of which nothing but the shape was looked at. */
  public static final class Unread {
    private final byte[] weighed;
    private final AnswerTable table;

    /**
     * Reads what {@link Answers#write} wrote.
     *
     * @throws IOException when it is anything else, as far as that shows, or can't be read
     */
    public Unread(DataInputStream in) throws IOException {
      this.weighed = in.readNBytes(Math.max(0, in.readInt()));
      this.table = AnswerTable.read(in);
    }

    /**
     * The answers; the caller has made sure that these are the bytes that were written.
     *
     * @throws withers.log.LogDamagedException when they are not
     */
    public Answers read() {
      return new Answers(table, Weighings.read(weighed));
    }
  }
}
