package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.finding.Life;
import withers.finding.RunResult;

/**
 * Where a run's follow-ups are to be found.
 *
 * @param lists the references on each organisation's list, as its CSV file has them
 */
record Whereabouts(RunResult run, Map<String, List<String>> lists) {

  /** Each follow-up that was found is in one of these. */
  enum Place {
    LISTED,
    BACKLOG,
    ASIDE,
    ANSWERED,
    SNOOZED
  }

  static Whereabouts of(RunResult run, Path workspace) throws IOException {
    Map<String, List<String>> lists = new HashMap<>();
    try (Stream<Path> folders = Files.list(workspace.resolve("lists").resolve(run.id()))) {
      for (Path folder : folders.filter(Files::isDirectory).toList()) {
        lists.put(folder.getFileName().toString(), references(folder.resolve("list.csv")));
      }
    }
    return new Whereabouts(run, lists);
  }

  private static List<String> references(Path csv) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser rows = CSVParser.parse(csv, StandardCharsets.UTF_8, format)) {
      return rows.stream().map(row -> row.get(0)).toList();
    }
  }

  /** All that is on a list. */
  Set<String> listed() {
    List<String> all = lists.values().stream().flatMap(List::stream).toList();
    assertThat(all).doesNotHaveDuplicates();
    return Set.copyOf(all);
  }

  /** The one place of a follow-up; on no list but that of who can act. */
  Place only(CaseKey key) {
    List<Place> places = new ArrayList<>();
    lists.forEach(
        (organisation, references) ->
            references.stream()
                .filter(Reference.of(key)::equals)
                .forEach(
                    one -> {
                      assertThat(organisation).isEqualTo(key.actor().value());
                      places.add(Place.LISTED);
                    }));
    if (run.backlogs().stream().anyMatch(backlog -> backlog.waiting().contains(key))) {
      places.add(Place.BACKLOG);
    }
    if (run.aside().contains(key)) {
      places.add(Place.ASIDE);
    }
    rest(key).ifPresent(places::add);
    assertThat(places).as(key.toString()).hasSize(1);
    return places.get(0);
  }

  private Optional<Place> rest(CaseKey key) {
    return run.lives().stream()
        .filter(life -> life.key().equals(key) && life.rests())
        .map(life -> life.stage() == Life.Stage.ANSWERED ? Place.ANSWERED : Place.SNOOZED)
        .findFirst();
  }
}
