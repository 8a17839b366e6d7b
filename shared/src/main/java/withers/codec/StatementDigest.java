package withers.codec;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.function.Consumer;
import withers.fact.ChipEvent;

/**
 * 128 bits that stand for what an event states: subject, slot, date and fact. Source, record key,
 * export date and place in the file take no part. It tells whether a source still says the same,
 * and settles the order of statements of one export date.
 *
 * <p>Frozen: the first 16 bytes of SHA-256 (FIPS 180-4) over the values in full, in the wire
 * table's order. Changing it reorders statements and makes every record look changed once.
 *
 * <p>The order is that of the bytes, unsigned.
 */
public record StatementDigest(long high, long low) implements Comparable<StatementDigest> {

  /** What one thread needs for one digest after another. */
  private record Tools(Bytes bytes, DigestOutput out, MessageDigest sha) {
    static Tools create() {
      Bytes bytes = new Bytes();
      return new Tools(bytes, new DigestOutput(bytes), sha256());
    }
  }

  private static final ThreadLocal<Tools> TOOLS = ThreadLocal.withInitial(Tools::create);

  /** The digest of what the event states. */
  public static StatementDigest of(ChipEvent event) {
    return over(
        out -> {
          out.shape(WireTable.SUBJECTS, event.subject());
          out.constant(WireConstants.SLOTS, event.origin().slot());
          out.optional(event.date(), WireType.DAY);
          out.shape(WireTable.FACTS, event.fact());
        });
  }

  private static StatementDigest over(Consumer<WireOutput> content) {
    Tools tools = TOOLS.get();
    tools.bytes.clear();
    content.accept(tools.out);
    tools.sha.update(tools.bytes.array(), 0, tools.bytes.size());
    ByteBuffer digest = ByteBuffer.wrap(tools.sha.digest());
    return new StatementDigest(digest.getLong(), digest.getLong());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }

  @Override
  public int compareTo(StatementDigest other) {
    int byHigh = Long.compareUnsigned(high, other.high);
    return byHigh != 0 ? byHigh : Long.compareUnsigned(low, other.low);
  }

  /** 32 hexadecimal digits. */
  @Override
  public String toString() {
    return "%016x%016x".formatted(high, low);
  }
}
