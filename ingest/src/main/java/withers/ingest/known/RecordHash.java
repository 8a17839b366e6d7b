package withers.ingest.known;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * SipHash with a result of 128 bits, or of 64 (Aumasson and Bernstein, SipHash: a fast short-input
 * PRF, 2012). With a secret key nobody who writes an export can make two records collide; by chance
 * two of a billion records do with a probability of less than 2^-69. Not safe for several threads.
 */
final class RecordHash {

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final int WORD = 8;
  private static final int LONG_RESULT = 0xEE;
  private static final int SHORT_RESULT = 0xFF;
  private static final int SECOND_HALF = 0xDD;

  private final HashKey key;
  private final int compressionRounds;
  private final int finalRounds;
  private final boolean fast;
  private long v0;
  private long v1;
  private long v2;
  private long v3;
  private long first;
  private long second;

  /** SipHash-1-3, the variant for tables. */
  RecordHash(HashKey key) {
    this(key, 1, 3, true);
  }

  /** Any variant. */
  RecordHash(HashKey key, int compressionRounds, int finalRounds) {
    this(key, compressionRounds, finalRounds, compressionRounds == 1);
  }

  private RecordHash(HashKey key, int compressionRounds, int finalRounds, boolean fast) {
    this.key = key;
    this.compressionRounds = compressionRounds;
    this.finalRounds = finalRounds;
    this.fast = fast;
  }

  /** Any variant, round by round. */
  static RecordHash byTheBook(HashKey key, int compressionRounds, int finalRounds) {
    return new RecordHash(key, compressionRounds, finalRounds, false);
  }

  /** Hashes bytes; the result is in {@link #first} and {@link #second}. */
  void hash(byte[] bytes, int from, int to) {
    start();
    v1 ^= LONG_RESULT;
    take(bytes, from, to);
    v2 ^= LONG_RESULT;
    rounds(finalRounds);
    first = v0 ^ v1 ^ v2 ^ v3;
    v1 ^= SECOND_HALF;
    rounds(finalRounds);
    second = v0 ^ v1 ^ v2 ^ v3;
  }

  /** The hash of 64 bits. */
  long shortHash(byte[] bytes) {
    start();
    take(bytes, 0, bytes.length);
    v2 ^= SHORT_RESULT;
    rounds(finalRounds);
    return v0 ^ v1 ^ v2 ^ v3;
  }

  long first() {
    return first;
  }

  long second() {
    return second;
  }

  private void start() {
    v0 = key.first() ^ 0x736f6d6570736575L;
    v1 = key.second() ^ 0x646f72616e646f6dL;
    v2 = key.first() ^ 0x6c7967656e657261L;
    v3 = key.second() ^ 0x7465646279746573L;
  }

  private void take(byte[] bytes, int from, int to) {
    int whole = from + ((to - from) & -WORD);
    if (fast) {
      takeWords(bytes, from, whole);
    } else {
      for (int i = from; i < whole; i += WORD) {
        word((long) LONGS.get(bytes, i));
      }
    }
    word(last(bytes, whole, to, to - from));
  }

  /** The same as {@link #word} for each word, with the state in local variables: twice as fast. */
  private void takeWords(byte[] bytes, int from, int to) {
    long a = v0;
    long b = v1;
    long c = v2;
    long d = v3;
    for (int i = from; i < to; i += WORD) {
      long word = (long) LONGS.get(bytes, i);
      d ^= word;
      a += b;
      c += d;
      b = Long.rotateLeft(b, 13) ^ a;
      d = Long.rotateLeft(d, 16) ^ c;
      a = Long.rotateLeft(a, 32) + d;
      c += b;
      b = Long.rotateLeft(b, 17) ^ c;
      d = Long.rotateLeft(d, 21) ^ a;
      c = Long.rotateLeft(c, 32);
      a ^= word;
    }
    v0 = a;
    v1 = b;
    v2 = c;
    v3 = d;
  }

  private static long last(byte[] bytes, int from, int to, int length) {
    long word = (long) length << 56;
    for (int i = from; i < to; i++) {
      word |= (bytes[i] & 0xFFL) << (i - from) * WORD;
    }
    return word;
  }

  private void word(long word) {
    v3 ^= word;
    rounds(compressionRounds);
    v0 ^= word;
  }

  private void rounds(int count) {
    for (int i = 0; i < count; i++) {
      v0 += v1;
      v2 += v3;
      v1 = Long.rotateLeft(v1, 13) ^ v0;
      v3 = Long.rotateLeft(v3, 16) ^ v2;
      v0 = Long.rotateLeft(v0, 32) + v3;
      v2 += v1;
      v1 = Long.rotateLeft(v1, 17) ^ v2;
      v3 = Long.rotateLeft(v3, 21) ^ v0;
      v2 = Long.rotateLeft(v2, 32);
    }
  }
}
