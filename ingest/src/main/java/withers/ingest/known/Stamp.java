package withers.ingest.known;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
 * @param orderChanges the file of what is other than in that one
 * @param timelines the files with the records' timelines, at least one, see {@link TimelineFiles}
 * @param fileStarts for each file of the last export, where its records start in the order
 * @param unordered numbers of records that are listed and have no place in the order
 * @param isRepeated whether any record has several places in the order
 * @param listings counts over all records
 */
record Stamp(
    String words,
    ImportId parent,
    LocalDate newest,
    HashKey key,
    FileStart start,
    Part order,
    Optional<Part> orderChanges,
    List<Part> timelines,
    List<Integer> fileStarts,
    List<Integer> unordered,
    boolean isRepeated,
    Listings listings) {

  /**
   * A file of the cache.
   *
   * @param name its name in the folder
   * @param size entries of the order; bytes of all timelines in the file
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
    writeParts(orderChanges.stream().toList(), out);
    writeParts(timelines, out);
    write(fileStarts, out);
    write(unordered, out);
    out.writeBoolean(isRepeated);
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
        parts(in).stream().findFirst(),
        parts(in),
        numbers(in),
        numbers(in),
        in.readBoolean(),
        Listings.read(in));
  }

  /** The names of all files that belong to it. */
  Set<String> names() {
    return Stream.of(Stream.of(order), orderChanges.stream(), timelines.stream())
        .flatMap(parts -> parts)
        .map(Part::name)
        .collect(Collectors.toSet());
  }

  private static void writeParts(List<Part> parts, DataOutput out) throws IOException {
    out.writeInt(parts.size());
    for (Part part : parts) {
      part.write(out);
    }
  }

  private static List<Part> parts(DataInput in) throws IOException {
    int size = in.readInt();
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      parts.add(Part.read(in));
    }
    return List.copyOf(parts);
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
