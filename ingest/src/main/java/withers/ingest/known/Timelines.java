package withers.ingest.known;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.CRC32C;
import withers.id.RecordKey;

/**
 * Timelines of a source's records in one file, to be had one by one by key or by number. An entry
 * is its length, its checksum, the key and the timeline; its number tells where it starts. Behind
 * the entries stands an index by the keys' hashes. Few of them are looked at, anywhere in the file:
 * they are read one by one, since pages that are mapped count as memory until they are let go.
 */
final class Timelines implements AutoCloseable {

  /** Entries start at multiples of this. */
  private static final int STEP = Long.BYTES;

  private static final int HEAD = 2 * Integer.BYTES;

  /** Most entries are shorter, with their heads. */
  private static final int USUAL = 256;

  /** An entry of the index is a number and one more, below four bits of the key's hash. */
  private static final int SIGN_SHIFT = 28;

  private final FileChannel file;
  private final int length;
  private final int indexLength;
  private final int checksum;
  private Optional<ByteBuffer> index = Optional.empty();

  private Timelines(FileChannel file, Stamp.Part part) {
    this.file = file;
    this.length = part.size();
    this.indexLength = Math.toIntExact(part.length() - part.size());
    this.checksum = part.checksum();
  }

  static Timelines open(Path folder, Stamp.Part part) throws IOException {
    return new Timelines(CacheFile.open(folder, part), part);
  }

  /** Takes entries. */
  @FunctionalInterface
  interface Entries {

    /** Takes one and returns its number. */
    int add(RecordKey key, byte[] timeline) throws IOException;
  }

  /** Numbers are less than this. */
  int bound() {
    return length / STEP;
  }

  /** Tells all entries in the order of their numbers. */
  void tell(Entries entries) throws IOException {
    for (int number = 0; number < bound(); ) {
      ByteBuffer payload = payload(number);
      entries.add(key(payload), timeline(payload));
      number += room(payload.capacity()) / STEP;
    }
  }

  /** What an entry takes up, of this many bytes. */
  private static int room(int payload) {
    return HEAD + payload + Math.floorMod(-payload, STEP);
  }

  /**
   * The record of this key, if there is one.
   *
   * @param wanted the key's {@linkplain #bytes bytes}
   * @param hash their short one
   * @param start what comes before this file's numbers
   */
  Optional<TimelineFiles.Entry> find(byte[] wanted, long hash, int start) {
    ByteBuffer entries = index();
    int slots = indexLength / Integer.BYTES;
    int slot = slot(hash, slots);
    for (int found = at(entries, slot); found != 0; found = at(entries, slot)) {
      if ((found ^ indexEntry(hash, 0)) >>> SIGN_SHIFT == 0) {
        int number = (found & (1 << SIGN_SHIFT) - 1) - 1;
        ByteBuffer payload = payload(number);
        if (isOf(payload, wanted)) {
          return Optional.of(new TimelineFiles.Entry(start + number, timeline(payload)));
        }
      }
      slot = slot + 1 & slots - 1;
    }
    return Optional.empty();
  }

  /** Others in a row of slots are passed over without a look at their keys, most of them. */
  private static int indexEntry(long hash, int value) {
    return (int) (hash >>> Long.SIZE - Integer.SIZE + SIGN_SHIFT) << SIGN_SHIFT | value;
  }

  private static int at(ByteBuffer entries, int slot) {
    return entries.getInt(slot * Integer.BYTES);
  }

  private static boolean isOf(ByteBuffer payload, byte[] key) {
    boolean isSame = payload.getShort(0) == key.length;
    for (int i = 0; i < key.length && isSame; i++) {
      isSame = payload.get(Short.BYTES + i) == key[i];
    }
    return isSame;
  }

  private static int slot(long hash, int slots) {
    return (int) hash & slots - 1;
  }

  /** Read when it is first needed. */
  private ByteBuffer index() {
    if (index.isEmpty()) {
      ByteBuffer entries = read(length, indexLength);
      CacheFile.require(entries.duplicate(), checksum);
      index = Optional.of(entries);
    }
    return index.get();
  }

  private ByteBuffer read(int at, int size) {
    ByteBuffer bytes = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    try {
      while (bytes.hasRemaining()) {
        if (file.read(bytes, at + bytes.position()) < 0) {
          throw new UnrecognisableException("a cache's file of another length");
        }
      }
    } catch (IOException unreadable) {
      throw new UnrecognisableException("a cache's file that can't be read");
    }
    return bytes.flip();
  }

  RecordKey key(int number) {
    return key(payload(number));
  }

  private static RecordKey key(ByteBuffer payload) {
    return new RecordKey(new String(keyBytes(payload), StandardCharsets.UTF_8));
  }

  byte[] timeline(int number) {
    return timeline(payload(number));
  }

  private static byte[] timeline(ByteBuffer payload) {
    payload.position(Short.BYTES + payload.getShort(0));
    byte[] timeline = new byte[payload.remaining()];
    payload.get(timeline);
    return timeline;
  }

  private ByteBuffer payload(int number) {
    int at = number * STEP;
    if (number < 0 || at + HEAD > length) {
      throw new UnrecognisableException("a cache's entry that is none");
    }
    ByteBuffer entry = read(at, Math.min(USUAL, length - at));
    int size = entry.getInt(0);
    if (!fits(at, size)) {
      throw new UnrecognisableException("a cache's entry that is none");
    }
    ByteBuffer whole = HEAD + size <= entry.capacity() ? entry : read(at, HEAD + size);
    ByteBuffer payload = whole.slice(HEAD, size).order(whole.order());
    CacheFile.require(payload.duplicate(), entry.getInt(Integer.BYTES));
    return payload;
  }

  private boolean fits(int at, int size) {
    return size >= Short.BYTES && size <= length - at - HEAD;
  }

  private static byte[] keyBytes(ByteBuffer payload) {
    byte[] key = new byte[payload.getShort()];
    payload.get(key);
    return key;
  }

  static byte[] bytes(RecordKey key) {
    return key.value().getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }

  /** Writes a file of timelines, and tells the number of each by the hash of its key. */
  static final class Writer implements AutoCloseable {

    private final String name;
    private final CacheFile file;
    private final RecordHash hash;
    private final KeyIndex index;
    private int length;

    /**
     * @param expected about how many entries there will be
     */
    Writer(Cache cache, HashKey key, int expected) throws IOException {
      this.index = new KeyIndex(expected);
      this.name = cache.newName("timelines");
      this.file = new CacheFile(cache.folder().resolve(name));
      this.hash = new RecordHash(key);
    }

    /**
     * Adds an entry and returns its number.
     *
     * @param again whether there is one of this key, which no longer counts
     * @throws UnrecognisableException when the hash of another key is the same
     */
    int add(RecordKey key, byte[] timeline, boolean again) throws IOException {
      byte[] name = bytes(key);
      ByteBuffer payload =
          ByteBuffer.allocate(Short.BYTES + name.length + timeline.length)
              .order(ByteOrder.LITTLE_ENDIAN);
      payload.putShort((short) name.length).put(name).put(timeline);
      int number = (int) (file.length() / STEP);
      if (again) {
        index.replace(hash.shortHash(name), number);
      } else {
        index.add(hash.shortHash(name), number);
      }
      put(payload.array());
      return number;
    }

    private void put(byte[] payload) throws IOException {
      CRC32C crc = new CRC32C();
      crc.update(payload);
      file.putInt(payload.length);
      file.putInt((int) crc.getValue());
      file.put(payload);
      file.put(new byte[Math.floorMod(-payload.length, STEP)]);
      if (file.length() > Integer.MAX_VALUE / 2) {
        throw new UnrecognisableException("more timelines than a cache can hold");
      }
      length = (int) file.length();
    }

    /** The number of the record whose key has this hash, or -1. */
    int find(long keyHash) {
      return index.find(keyHash);
    }

    int find(RecordKey key) {
      return find(hash.shortHash(bytes(key)));
    }

    Stamp.Part finish() throws IOException {
      file.startChecksum();
      for (int slot = 0; slot < index.slots(); slot++) {
        int value = index.value(slot);
        file.putInt(value == 0 ? 0 : indexEntry(index.hash(slot), value));
      }
      int checksum = file.checksum();
      return new Stamp.Part(name, length, file.length(), checksum);
    }

    @Override
    public void close() throws IOException {
      file.close();
    }
  }
}
