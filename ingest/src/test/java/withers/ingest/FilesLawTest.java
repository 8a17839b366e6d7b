package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.ingest.change.InEffect;

/** The law of the set of exports, with files: permuted, repeated, and split but given as one. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Tag("long")
class FilesLawTest {

  private static final int SEEDS = 60;
  private static final LocalDate START = LocalDate.of(2031, 1, 31);
  private static final List<String> NUMBERS =
      List.of(
          "999010000000017",
          "999010000000018",
          "999 010 000 000 025",
          "9990100000O0017",
          "9.9901E+14",
          "12345678901234");
  private static final List<String> CLIENTS = List.of("Ada", "Bela", "");
  private static final List<String> DAYS = List.of("2031-01-03", "2031-01-04", "", "yesterday");

  @TempDir Path folder;

  static LongStream seeds() {
    return LongStream.range(0, SEEDS);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void the_order_the_number_and_the_splitting_of_files_don_t_matter(long seed) {
    Random random = new Random(seed);
    List<List<String>> exports = exports(random);
    TestImports inOrder = new TestImports(folder.resolve("in-order"));
    for (int i = 0; i < exports.size(); i++) {
      inOrder.take(whole(inOrder, i, exports.get(i)));
    }
    TestImports shuffled = new TestImports(folder.resolve("shuffled"));
    List<Integer> order = new ArrayList<>(IntStream.range(0, exports.size()).boxed().toList());
    order.add(random.nextInt(exports.size()));
    Collections.shuffle(order, random);
    for (int i : order) {
      shuffled.take(split(shuffled, i, exports.get(i), random));
    }

    assertThat(InEffect.on(shuffled.log.snapshot(), TestImports.CLINIC))
        .as("seed %d, order %s of %s", seed, order, exports)
        .isEqualTo(InEffect.on(inOrder.log.snapshot(), TestImports.CLINIC));
    assertThat(shuffled.vault.size()).isEqualTo(inOrder.vault.size());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void rows_put_right_in_quarantine_count_as_one_more_export_in_any_order(long seed) {
    Random random = new Random(seed);
    List<List<String>> exports = exports(random);
    TestImports inOrder = new TestImports(folder.resolve("in-order"));
    for (int i = 0; i < exports.size(); i++) {
      inOrder.take(whole(inOrder, i, exports.get(i)));
    }
    List<Path> corrections = inOrder.quarantined().stream().map(q -> putRight(q, random)).toList();
    corrections.forEach(file -> inOrder.take(List.of(file)));
    TestImports shuffled = new TestImports(folder.resolve("shuffled"));
    List<List<Path>> files = new ArrayList<>();
    for (int i = 0; i < exports.size(); i++) {
      files.add(split(shuffled, i, exports.get(i), random));
    }
    corrections.forEach(file -> files.add(List.of(file)));
    files.add(files.get(random.nextInt(files.size())));
    Collections.shuffle(files, random);
    files.forEach(shuffled::take);

    assertThat(InEffect.on(shuffled.log.snapshot(), TestImports.CLINIC))
        .as("seed %d, order %s of %s", seed, files, exports)
        .isEqualTo(InEffect.on(inOrder.log.snapshot(), TestImports.CLINIC));
    assertThat(shuffled.vault.size()).isEqualTo(inOrder.vault.size());
  }

  /** Some of the cells that could not be read; others stay as they are. */
  private Path putRight(Path quarantine, Random random) {
    try {
      StringBuilder right = new StringBuilder();
      for (String line : Files.readAllLines(quarantine)) {
        right.append(random.nextInt(3) == 0 ? line : putRight(line, random)).append("\n");
      }
      return Files.writeString(folder.resolve(quarantine.getFileName()), right);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String putRight(String line, Random random) {
    return line.replace("'12345678901234,", oneOf(NUMBERS.subList(0, 3), random) + ",")
        .replace(",yesterday,", "," + oneOf(DAYS.subList(0, 3), random) + ",");
  }

  private static List<List<String>> exports(Random random) {
    int keys = 1 + random.nextInt(5);
    List<List<String>> exports = new ArrayList<>();
    List<String> last = new ArrayList<>(Collections.nCopies(keys, ""));
    for (int i = 0; i < 2 + random.nextInt(4); i++) {
      List<String> rows = new ArrayList<>();
      for (int k = 0; k < keys; k++) {
        if (last.get(k).isEmpty() || random.nextInt(3) == 0) {
          last.set(k, row(k, random));
        }
        if (random.nextInt(4) > 0) {
          rows.add(last.get(k));
        }
      }
      exports.add(rows);
    }
    return exports;
  }

  private static String row(int key, Random random) {
    return "K%d,%s,Pip,%s,%s"
        .formatted(key, oneOf(NUMBERS, random), oneOf(DAYS, random), oneOf(CLIENTS, random));
  }

  private static String oneOf(List<String> texts, Random random) {
    return texts.get(random.nextInt(texts.size()));
  }

  private static List<Path> whole(TestImports imports, int export, List<String> rows) {
    return List.of(imports.file(START.plusMonths(export) + ".csv", rows));
  }

  private static List<Path> split(
      TestImports imports, int export, List<String> rows, Random random) {
    List<String> mixed = new ArrayList<>(rows);
    Collections.shuffle(mixed, random);
    int cut = random.nextInt(mixed.size() + 1);
    LocalDate date = START.plusMonths(export);
    return List.of(
        imports.file("a-" + date + ".csv", mixed.subList(0, cut)),
        imports.file("b-" + date + ".csv", mixed.subList(cut, mixed.size())));
  }
}
