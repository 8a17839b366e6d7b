package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.Refused;
import withers.chip.Reading.Tentative;
import withers.chip.Reading.Truncated;

/** Holds the reader to the examples of its page in docs. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChipNumbersPageTest {

  private static final Path PAGE = Path.of("..", "docs", "chip-numbers.md");

  private final ChipNumberReader reader = new ChipNumberReader(true);

  @Test
  void accepts_what_the_page_accepts() throws IOException {
    for (List<String> row : examples("Accepted without guessing", 14)) {
      assertThat(reader.read(row.get(0)))
          .as(row.get(0))
          .isEqualTo(new Accepted(ChipNumber.parse(row.get(1)), Set.of()));
    }
  }

  @Test
  void waits_where_the_page_waits() throws IOException {
    for (List<String> row : examples("Waiting for a second source", 2)) {
      assertThat(reader.read(row.get(0)))
          .isInstanceOfSatisfying(
              Tentative.class, it -> assertThat(it.number()).hasToString(row.get(1)));
    }
  }

  @Test
  void guesses_what_the_page_guesses() throws IOException {
    for (List<String> row : examples("Guessed, and never applied on reading", 13)) {
      Reading reading = reader.read(row.get(0));
      String answer =
          reading instanceof Truncated truncated
              ? truncated.survivingDigits() + " " + truncated.lostDigits()
              : ((Guessed) reading)
                  .candidates().stream()
                      .map(candidate -> candidate.number().display())
                      .collect(Collectors.joining(" "));
      String expected = reading instanceof Truncated ? row.get(1) + " " + row.get(2) : row.get(1);
      assertThat(answer).as(row.get(0)).isEqualTo(expected);
    }
  }

  @Test
  void refuses_what_the_page_refuses() throws IOException {
    for (List<String> row : examples("Refused", 8)) {
      assertThat(reader.read(row.get(0)))
          .isInstanceOfSatisfying(
              Refused.class, refused -> assertThat(refused.reason().name()).isEqualTo(row.get(1)));
    }
  }

  private static List<List<String>> examples(String section, int count) throws IOException {
    List<List<String>> rows =
        Files.readAllLines(PAGE).stream()
            .dropWhile(line -> !line.equals("## " + section))
            .skip(1)
            .takeWhile(line -> !line.startsWith("## "))
            .filter(line -> line.startsWith("| `"))
            .map(ChipNumbersPageTest::cells)
            .toList();
    assertThat(rows).as(section).hasSize(count);
    return rows;
  }

  private static List<String> cells(String line) {
    return List.of(line.substring(2).split(" *\\| *")).stream()
        .map(cell -> cell.startsWith("`") ? cell.substring(1, cell.length() - 1) : cell)
        .toList();
  }
}
