package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.corpus.PublishedValues;

/** Words are as alike as published tables and a second implementation say. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LikenessTest {
  private static final int PAIRS = 100_000;
  private static final long SEED = 20_261_126;

  private record Two(String one, String other) {
    double by(TextbookJaro jaro) {
      return jaro.similarity(one, other);
    }
  }

  @Test
  void published_similarities_come_out() {
    List<List<String>> rows = PublishedValues.of("jaro-winkler");

    assertThat(rows).hasSize(16);
    for (List<String> row : rows) {
      assertThat(Likeness.similarity(row.get(0), row.get(1)))
          .as(row.get(0))
          .isCloseTo(Double.parseDouble(row.get(3)), within(0.0005));
    }
  }

  /**
   * DuckDB's {@code jaro_winkler_similarity}, which is RapidFuzz's: a tenth for each of four
   * letters of a common prefix when Jaro is 0.7 or more, as ours; but half a transposition is left
   * out.
   */
  @Test
  void a_second_implementation_agrees_on_many_pairs_but_for_half_transpositions()
      throws SQLException {
    List<Two> pairs = pairs(new Random(SEED));
    List<Double> theirs = similarities(pairs);

    assertThat(theirs).hasSize(PAIRS);
    for (int i = 0; i < PAIRS; i++) {
      Two two = pairs.get(i);
      assertThat(theirs.get(i))
          .as("seed %d, pair %d: %s", SEED, i, two)
          .isCloseTo(two.by(new TextbookJaro(false)), within(1e-9));
      assertThat(Likeness.similarity(two.one, two.other))
          .as("seed %d, pair %d: %s", SEED, i, two)
          .isCloseTo(two.by(new TextbookJaro(true)), within(1e-9));
    }
  }

  /** The library's own figure is what the bound is held against. */
  @Test
  void the_bound_that_spares_most_of_the_work_is_never_below_the_similarity() {
    for (Two two : pairs(new Random(SEED))) {
      if (!two.one.isEmpty() && !two.other.isEmpty()) {
        assertThat(Likeness.mostSimilar(two.one, two.other))
            .as("seed %d: %s", SEED, two)
            .isGreaterThanOrEqualTo(Likeness.similarity(two.one, two.other))
            .isEqualTo(Likeness.mostSimilar(two.other, two.one));
      }
    }
  }

  private static List<Double> similarities(List<Two> pairs) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      statement.execute("create table pairs (number integer, one varchar, other varchar)");
      append(connection.unwrap(DuckDBConnection.class), pairs);
      List<Double> similarities = new ArrayList<>();
      try (ResultSet rows =
          statement.executeQuery(
              "select jaro_winkler_similarity(one, other) from pairs order by number")) {
        while (rows.next()) {
          similarities.add(rows.getDouble(1));
        }
      }
      return similarities;
    }
  }

  private static void append(DuckDBConnection connection, List<Two> pairs) throws SQLException {
    try (DuckDBAppender appender = connection.createAppender("main", "pairs")) {
      for (int i = 0; i < pairs.size(); i++) {
        appender.beginRow();
        appender.append(i);
        appender.append(pairs.get(i).one);
        appender.append(pairs.get(i).other);
        appender.endRow();
      }
    }
  }

  /** Words of syllables, and the same with one to three letters changed, or another word. */
  private static List<Two> pairs(Random random) {
    List<Two> pairs = new ArrayList<>();
    for (int i = 0; i < PAIRS; i++) {
      String word = word(random);
      pairs.add(inOrder(word, random.nextInt(4) == 0 ? word(random) : slips(word, random)));
    }
    return pairs;
  }

  /** The first of the two is matched with the other, and which that is may matter. */
  private static Two inOrder(String one, String other) {
    boolean first = one.compareTo(other) <= 0;
    return new Two(first ? one : other, first ? other : one);
  }

  private static String word(Random random) {
    List<String> syllables =
        List.of("ma", "ber", "li", "stein", "o", "kor", "ne", "shi", "van", "ta");
    StringBuilder word = new StringBuilder();
    for (int left = 1 + random.nextInt(4); left > 0; left--) {
      word.append(syllables.get(random.nextInt(syllables.size())));
    }
    return word.toString();
  }

  private static String slips(String word, Random random) {
    StringBuilder changed = new StringBuilder(word);
    for (int left = 1 + random.nextInt(3); left > 0; left--) {
      int at = random.nextInt(changed.length() + 1);
      char letter = (char) ('a' + random.nextInt(26));
      if (at < changed.length() && random.nextBoolean()) {
        changed.setCharAt(at, letter);
      } else {
        changed.insert(at, letter);
      }
    }
    return changed.toString();
  }

  @ParameterizedTest
  @CsvSource({
    "thornfield, thornfeild, true",
    "margaret, margret, true",
    "wood, ward, false",
    "lee, lea, false",
    "jon, john, true",
    "anne, alan, false",
    "shackleford, shakleferd, true",
    "smith, jones, false"
  })
  void a_slip_is_told_from_another_word(String one, String other, boolean slip) {
    assertThat(Likeness.isSlipApart(one, other)).isEqualTo(slip);
    assertThat(Likeness.isSlipApart(other, one)).isEqualTo(slip);
  }
}
