package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.source.InputRefusedException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReadAheadTest {

  private static final FileFormat FORMAT =
      new FileFormat(
          TextFormat.FOUND_OUT, Optional.empty(), List.of(), DatePattern.of("yyyy-MM-dd"));
  private static final List<String> WANTED = List.of("No", "Name", "Town");
  private static final String HEADER = "No,Name,Town\n";

  @TempDir Path folder;

  private final AtomicLong bytes = new AtomicLong();

  @Test
  void the_same_rows_on_the_same_lines_and_the_same_remarks() throws IOException {
    for (long seed = 0; seed < 20; seed++) {
      ExportFile file = file("plain-" + seed, text(new Random(seed)));
      List<String> expected = told(file, UnaryOperator.identity());
      assertThat(told(file, ReadAhead::of)).as("seed %d", seed).isEqualTo(expected);
    }
  }

  @Test
  void the_same_failure_after_the_same_row() throws IOException {
    for (long seed = 0; seed < 20; seed++) {
      String text = text(new Random(seed));
      int at = text.indexOf('\n', new Random(seed).nextInt(text.length() - 100));
      ExportFile file =
          file("broken-" + seed, text.substring(0, at) + "\n9,\"Ada\" E,x" + text.substring(at));
      List<String> expected = told(file, UnaryOperator.identity());
      assertThat(expected.get(expected.size() - 1)).startsWith("Expected ");
      assertThat(told(file, ReadAhead::of)).as("seed %d", seed).isEqualTo(expected);
    }
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder(HEADER);
    int rows = 1 + random.nextInt(3000);
    for (int i = 0; i < rows; i++) {
      text.append(
          switch (random.nextInt(40)) {
            case 0 -> "\n";
            case 1 -> HEADER;
            case 2 -> i + ",\"Ada,\n Example\",Fairhaven\n";
            case 3 -> i + ",Ada " + "x".repeat(random.nextInt(20_000)) + ",Fairhaven\n";
            default -> i + ",Ada Example,Fairhaven\n";
          });
    }
    return text.append("1,Bo,Fairhaven\n").toString();
  }

  private ExportFile file(String name, String text) throws IOException {
    return ExportFile.inspect(Files.writeString(folder.resolve(name + ".csv"), text), FORMAT);
  }

  private List<String> told(ExportFile file, UnaryOperator<Rows> way) {
    List<String> told = new ArrayList<>();
    try (Rows rows = way.apply(open(file))) {
      for (Optional<Row> row = rows.next(); row.isPresent(); row = rows.next()) {
        told.add(row.get().line() + ": " + row.get().text());
      }
      told.addAll(rows.remarks());
    } catch (InputRefusedException refused) {
      told.add(refused.getMessage());
    }
    return told;
  }

  private Rows open(ExportFile file) {
    return OpenExport.rows(file, FORMAT, WANTED, bytes::addAndGet);
  }

  @Test
  void what_is_closed_early_was_not_read_far_and_is_read_no_further() throws IOException {
    ExportFile file = file("long", HEADER + "1,Ada Example,Fairhaven\n".repeat(400_000));
    try (Rows rows = ReadAhead.of(open(file))) {
      assertThat(rows.next()).isPresent();
    }
    long read = bytes.get();
    assertThat(read).isLessThan(file.size() / 10);
    assertThat(Thread.getAllStackTraces().keySet().stream().map(Thread::getName))
        .doesNotContain("reading ahead");
    assertThat(bytes.get()).isEqualTo(read);
  }
}
