package withers.ingest.known;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RowNotesTest {

  /** Notes of as many rows as are held without a file. */
  private static final int HELD = 1 << 15;

  @TempDir private Path folder;

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }

  private static void fill(RowNotes notes, int rows, Random random) throws IOException {
    for (int i = 0; i < rows; i++) {
      notes.add(random.nextLong(), random.nextLong(), random.nextLong());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, HELD - 1, HELD, HELD + 1, 2 * HELD, 100_000})
  void come_out_as_they_went_in_whenever_they_are_asked_for(int rows) throws IOException {
    long seed = 20261127;
    try (RowNotes notes = new RowNotes(new Cache(folder))) {
      fill(notes, rows, new Random(seed));

      requireAsFilled(notes, rows, new Random(seed));
      requireAsFilled(notes, rows, new Random(seed));
    }
  }

  private static void requireAsFilled(RowNotes notes, int rows, Random random) throws IOException {
    int[] seen = {0};
    notes.forEach(
        (row, first, second, keyHash) ->
            assertThat(new long[] {row, first, second, keyHash})
                .containsExactly(
                    seen[0]++, random.nextLong(), random.nextLong(), random.nextLong()));
    assertThat(notes.size()).isEqualTo(rows);
    assertThat(seen[0]).isEqualTo(rows);
  }

  @ParameterizedTest
  @CsvSource({
    // rows; of how many the notes are in a file, at 24 bytes each
    "0, 0",
    HELD + ", 0",
    HELD + 1 + ", " + HELD,
    2 * HELD + ", " + HELD,
    2 * HELD + 1 + ", " + 2 * HELD
  })
  void of_more_rows_than_are_held_go_to_a_file_that_is_gone_afterwards(int rows, int inFile)
      throws IOException {
    try (RowNotes notes = new RowNotes(new Cache(folder))) {
      fill(notes, rows, new Random(1));

      assertThat(notes.inFile()).isEqualTo(24L * inFile);
    }

    assertThat(files()).isEmpty();
  }

  @Test
  void of_more_rows_than_are_held_need_a_folder_that_can_be_written() throws IOException {
    Path noFolder = Files.createFile(folder.resolve("taken"));
    try (RowNotes notes = new RowNotes(new Cache(noFolder))) {
      fill(notes, HELD, new Random(1));

      assertThatIOException().isThrownBy(() -> notes.add(1, 2, 3));
    }
  }
}
