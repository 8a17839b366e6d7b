package withers.ingest.change;

import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;

/**
 * Values by keys, both as bytes. Besides these an entry takes two bytes where they are short, and a
 * slot of eight; of the slots a quarter to five eighths are free. It grows page by page and table
 * by table, and copies nothing large. Not safe for several threads.
 */
final class PackedMap {

  private static final int TABLES = 1 << AddressTable.TABLE_BITS;

  /** Unused bytes that nobody minds. */
  private static final long WORTH_IT = 1 << 20;

  private final Pages pages = new Pages();
  private final AddressTable[] tables = new AddressTable[TABLES];

  /** Nobody who does not know it can make many keys of one hash, which would be slow. */
  private final long seed = new SecureRandom().nextLong();

  private long unused;

  PackedMap() {
    Arrays.setAll(tables, i -> new AddressTable());
  }

  /** The value of a key. */
  Optional<byte[]> get(byte[] key) {
    long hash = hash(key);
    AddressTable table = table(hash);
    int slot = find(table, hash, key);
    return table.isFree(slot)
        ? Optional.empty()
        : Optional.of(entry(table.address(slot)).valueBytes());
  }

  /**
   * Gives a key a value. One of another length than before goes to the end; its old place stays
   * unused.
   *
   * @param key of a byte or more
   */
  void put(byte[] key, byte[] value) {
    long hash = hash(key);
    AddressTable table = table(hash);
    int slot = find(table, hash, key);
    if (table.isFree(slot)) {
      table.set(slot, hash, add(key, value));
      return;
    }
    PackedEntry before = entry(table.address(slot));
    if (!before.replace(value)) {
      before.retire();
      unused += before.size();
      table.set(slot, hash, add(key, value));
    }
  }

  private long add(byte[] key, byte[] value) {
    long address = pages.add(PackedEntry.size(key, value));
    PackedEntry.write(pages.page(address), Pages.offset(address), key, value);
    return address;
  }

  private int find(AddressTable table, long hash, byte[] key) {
    return table.find(hash, address -> entry(address).isOf(key));
  }

  private PackedEntry entry(long address) {
    return new PackedEntry(pages.page(address), Pages.offset(address));
  }

  private AddressTable table(long hash) {
    return tables[(int) hash & TABLES - 1];
  }

  private long hash(byte[] key) {
    long hash = seed;
    for (byte one : key) {
      hash = (hash ^ one) * 0x9E3779B97F4A7C15L;
      hash ^= hash >>> 29;
    }
    return hash;
  }

  /** Takes an entry. */
  @FunctionalInterface
  interface Visitor {
    void on(byte[] key, byte[] value);
  }

  /** Whether more than half of its room is unused, and that is worth anything. */
  boolean isWasteful() {
    return unused > Math.max(pages.end() / 2, WORTH_IT);
  }

  /**
   * Shows all entries, those first that have been at their place for longest. Meanwhile the entry
   * that is shown may be given another value, and is not shown again; no other may.
   */
  void forEach(Visitor visitor) {
    long end = pages.end();
    for (int page = 0; page < pages.count() && Pages.start(page) < end; page++) {
      show(page, end, visitor);
    }
  }

  /** Shows all entries and lets go of them page by page. It is good for nothing after that. */
  void drain(Visitor visitor) {
    Arrays.setAll(tables, i -> new AddressTable());
    for (int page = 0; page < pages.count(); page++) {
      show(page, pages.end(), visitor);
      pages.release(page);
    }
  }

  private void show(int page, long end, Visitor visitor) {
    byte[] bytes = pages.page(Pages.start(page));
    int at = 0;
    while (at < bytes.length && bytes[at] != 0 && Pages.start(page) + at < end) {
      PackedEntry entry = new PackedEntry(bytes, at);
      if (entry.counts()) {
        visitor.on(entry.keyBytes(), entry.valueBytes());
      }
      at = entry.end();
    }
  }
}
