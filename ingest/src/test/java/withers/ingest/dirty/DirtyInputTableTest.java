package withers.ingest.dirty;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

/** {@code docs/dirty-input.md} and the fixtures cover each other. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DirtyInputTableTest {

  private static final Path HOME = DirtyFixture.root().getParent().getParent();
  private static final Pattern NAME = Pattern.compile("`([^`]+)`");

  /** A row of a table whose last column is headed "example". */
  private record Decision(String line, Set<String> examples) {}

  @Test
  void each_decision_names_an_example_that_is_there() throws IOException {
    Set<String> there = new TreeSet<>(fixtures());
    there.addAll(tests());

    assertThat(decisions())
        .hasSizeGreaterThan(50)
        .allSatisfy(
            decision ->
                assertThat(decision.examples()).as(decision.line()).isNotEmpty().isSubsetOf(there));
  }

  @Test
  void each_fixture_is_named_by_a_decision() throws IOException {
    Set<String> named =
        decisions().stream()
            .flatMap(decision -> decision.examples().stream())
            .collect(Collectors.toSet());

    assertThat(fixtures()).isSubsetOf(named);
  }

  @Test
  void each_fixture_has_an_input_and_an_expected_reading() {
    assertThat(DirtyFixture.all())
        .allSatisfy(
            fixture -> {
              assertThat(fixture.inputs()).as(fixture.name()).isNotEmpty();
              assertThat(fixture.expected()).as(fixture.name()).isPresent();
            });
  }

  private static List<String> fixtures() {
    return DirtyFixture.all().stream().map(DirtyFixture::name).toList();
  }

  private static List<String> tests() throws IOException {
    try (Stream<Path> files = Files.walk(HOME.resolve("ingest/src/test/java"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith("Test.java"))
          .map(name -> name.substring(0, name.length() - ".java".length()))
          .toList();
    }
  }

  private static List<Decision> decisions() throws IOException {
    List<Decision> decisions = new ArrayList<>();
    boolean inTable = false;
    for (String line : Files.readAllLines(HOME.resolve("docs/dirty-input.md"))) {
      if (line.endsWith("| example |")) {
        inTable = true;
      } else if (!line.startsWith("|")) {
        inTable = false;
      } else if (inTable && !line.startsWith("| ---")) {
        decisions.add(new Decision(line, examples(line)));
      }
    }
    return decisions;
  }

  private static Set<String> examples(String line) {
    String[] cells = line.split("\\|");
    return NAME.matcher(cells[cells.length - 1])
        .results()
        .map((MatchResult name) -> name.group(1))
        .collect(Collectors.toSet());
  }
}
