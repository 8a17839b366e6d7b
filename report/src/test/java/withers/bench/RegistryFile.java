package withers.bench;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Random;

/** A registry's export of any length: invented accounts, written one at a time. */
final class RegistryFile {

  static final String PROFILE =
      """
      organisation: coast-registry
      kind: registry-contacts
      files: accounts-*.csv
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      key: Account
      columns:
        chip: Number
        name: Animal
        species: Kind
        born: Born
        registered: Registered
        primary: {name: Name, phones: Phone, emails: E-mail, address: Address, town: Town}
      """;

  private static final String HEADER =
      "Account,Number,Animal,Kind,Born,Registered,Name,Phone,E-mail,Address,Town\n";
  private static final int FIELD_REGISTERED = 5;
  private static final int FIELD_PHONE = 7;

  private RegistryFile() {}

  /** Writes rows of some 148 bytes. */
  static void write(Path file, long rows, long seed) throws IOException {
    Random random = new Random(seed);
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write(HEADER);
      for (long i = 0; i < rows; i++) {
        out.write(row(i, random));
      }
    }
    force(file);
  }

  private static String row(long i, Random random) {
    return "A%08d,99901%010d,Pip %d,%s,20%02d-%02d-%02d,20%02d-%02d-%02d,Ada Example %d,%s,ada%d@example.org,\"%d Harbour Street, flat %d\",Fairhaven\n"
        .formatted(
            i,
            i,
            random.nextInt(9000),
            random.nextBoolean() ? "dog" : "cat",
            10 + random.nextInt(10),
            1 + random.nextInt(12),
            1 + random.nextInt(28),
            20 + random.nextInt(5),
            1 + random.nextInt(12),
            1 + random.nextInt(28),
            random.nextInt(100_000),
            phone(random),
            i,
            1 + random.nextInt(999),
            1 + random.nextInt(99));
  }

  /** One of those that are reserved for fiction. */
  private static String phone(Random random) {
    return "(%d) 555-01%02d".formatted(212 + random.nextInt(700), random.nextInt(100));
  }

  /**
   * Writes a file again with some of its rows changed: of these every other one has another phone,
   * the others another day of registration. It is on the disk when this returns, so that nobody
   * measures how it gets there.
   *
   * @param every into how many groups, of no pattern, the rows fall
   * @param group the one whose rows change, from 0 to less than that
   * @return how many were changed
   */
  static long change(Path from, Path to, int every, int group, long seed) throws IOException {
    Random groups = new Random(seed); // the same each time: no row is in two groups
    Random random = new Random(seed + 1 + group);
    long changed = 0;
    try (BufferedReader in = Files.newBufferedReader(from);
        BufferedWriter out = Files.newBufferedWriter(to)) {
      out.write(in.readLine() + "\n");
      for (String row = in.readLine(); row != null; row = in.readLine()) {
        boolean changes = groups.nextInt(every) == group;
        out.write(changes ? changed(row, changed++ % 2 == 0, random) : row);
        out.write('\n');
      }
    }
    force(to);
    return changed;
  }

  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  private static String changed(String row, boolean phone, Random random) {
    String[] fields = row.split(",", -1);
    int field = phone ? FIELD_PHONE : FIELD_REGISTERED;
    String before = fields[field];
    while (fields[field].equals(before)) {
      fields[field] = phone ? phone(random) : day(random);
    }
    return String.join(",", fields);
  }

  private static String day(Random random) {
    return "2025-%02d-%02d".formatted(1 + random.nextInt(12), 1 + random.nextInt(28));
  }
}
