package withers.ingest.known;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import withers.id.ImportId;
import withers.ingest.change.Listings;

/**
 * What a cache is good for, and which files belong to it.
 *
 * @param words the circumstances in which its records were read, see {@link Circumstances#inWords}
 * @param parent the source's newest marker: the cache tells the log as it was up to this one
 * @param newest the newest date that the source has spoken of so far
 * @param key what the hashes were made with
 * @param start what stands before the first row of each file
 * @param order the file with the records' hashes
 * @param timelines the file with the records' timelines
 * @param fileStarts for each file of the last export, where its records start in the order
 * @param unordered numbers of records that are listed and have no place in the order
 * @param listings counts over all records
 */
record Stamp(
    String words,
    ImportId parent,
    LocalDate newest,
    HashKey key,
    FileStart start,
    Part order,
    Part timelines,
    List<Integer> fileStarts,
    List<Integer> unordered,
    Listings listings) {

  /**
   * A file of the cache.
   *
   * @param name its name in the folder
   * @param size entries of the order; bytes of all timelines
   * @param length of the file, in bytes
   * @param checksum CRC-32C of the order; of the timelines' index
   */
  record Part(String name, int size, long length, int checksum) {

    void write(DataOutput out) throws IOException {
      out.writeUTF(name);
      out.writeInt(size);
      out.writeLong(length);
      out.writeInt(checksum);
    }

    static Part read(DataInput in) throws IOException {
      return new Part(in.readUTF(), in.readInt(), in.readLong(), in.readInt());
    }
  }

  void write(DataOutput out) throws IOException {
    out.writeUTF(words);
    out.writeLong(parent.value().getMostSignificantBits());
    out.writeLong(parent.value().getLeastSignificantBits());
    out.writeLong(newest.toEpochDay());
    out.writeLong(key.first());
    out.writeLong(key.second());
    start.write(out);
    order.write(out);
    timelines.write(out);
    write(fileStarts, out);
    write(unordered, out);
    listings.write(out);
  }

  static Stamp read(DataInput in) throws IOException {
    return new Stamp(
        in.readUTF(),
        new ImportId(new UUID(in.readLong(), in.readLong())),
        LocalDate.ofEpochDay(in.readLong()),
        new HashKey(in.readLong(), in.readLong()),
        FileStart.read(in),
        Part.read(in),
        Part.read(in),
        numbers(in),
        numbers(in),
        Listings.read(in));
  }

  private static void write(List<Integer> numbers, DataOutput out) throws IOException {
    out.writeInt(numbers.size());
    for (int number : numbers) {
      out.writeInt(number);
    }
  }

  private static List<Integer> numbers(DataInput in) throws IOException {
    int size = in.readInt();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      numbers.add(in.readInt());
    }
    return List.copyOf(numbers);
  }
}
