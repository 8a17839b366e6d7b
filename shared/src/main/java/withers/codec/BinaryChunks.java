package withers.codec;

import java.time.DateTimeException;
import java.util.List;
import java.util.function.Consumer;
import withers.log.ChunkCodec;
import withers.log.LogDamagedException;

/**
 * Chunks of events of one family: the format's number, how many events, and the events one after
 * another. Dictionaries, and the predecessors that days, lines and numbers are told by, hold for
 * one chunk, so that each can be read alone.
 */
record BinaryChunks<E>(Family<E> family) implements ChunkCodec<E> {

  /** The newest format of a chunk. It changes only when the encoding itself does. */
  static final int FORMAT = 1;

  @Override
  public byte[] encode(List<E> events) {
    ChunkOutput out = new ChunkOutput(events.size());
    out.number(FORMAT);
    out.number(events.size());
    for (E event : events) {
      out.shape(family, event);
    }
    return out.toBytes();
  }

  @Override
  public void decode(byte[] chunk, Consumer<? super E> consumer) {
    ByteReader bytes = new ByteReader(chunk);
    long format = bytes.unsigned();
    if (format != FORMAT) {
      throw new LogDamagedException(
          "Expected a chunk of format %d, but found format %s: it is damaged, or a newer program wrote it"
              .formatted(FORMAT, Long.toUnsignedString(format)));
    }
    int events = bytes.length("a chunk");
    ChunkInput in = new ChunkInput(bytes);
    for (int i = 0; i < events; i++) {
      consumer.accept(read(in, bytes));
    }
    if (!bytes.atEnd()) {
      throw bytes.damaged("bytes left over");
    }
  }

  private E read(ChunkInput in, ByteReader bytes) {
    try {
      return in.shape(family);
    } catch (IllegalArgumentException | ArithmeticException | DateTimeException e) {
      LogDamagedException damaged = bytes.damaged("a value out of range");
      damaged.initCause(e);
      throw damaged;
    }
  }
}
