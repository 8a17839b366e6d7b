package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.audit.Confidential;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.custody.Discretion;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.reconcile.cli.RunStore;
import withers.report.privacy.Mentions;
import withers.run.AnimalReader;
import withers.run.DiscretionReader;
import withers.source.InputRefusedException;
import withers.workspace.FolderTree;
import withers.workspace.Workspace;

/** Writes down what is confidential, and takes it out of what was made for people before. */
record Silencing(Workspace workspace) {

  /** All chips of the animals that carry these numbers or whose records name these people. */
  List<ChipNumber> animals(Set<ChipNumber> numbers, Set<ContactRef> people) {
    try (EventLog log = filledLog()) {
      LogSnapshot snapshot = log.snapshot();
      AnimalReader reader =
          new AnimalReader(snapshot, Sources.of(snapshot.markers(), Scope.asOf(workspace.today())));
      Set<ChipNumber> asked = new TreeSet<>(numbers);
      asked.addAll(people.isEmpty() ? Set.of() : Mentions.numbers(snapshot, people));
      Set<ChipNumber> all = new TreeSet<>();
      asked.forEach(number -> all.addAll(reader.read(number).chips()));
      return List.copyOf(all);
    }
  }

  private EventLog filledLog() {
    return workspace
        .openFilledLog()
        .orElseThrow(
            () -> new InputRefusedException("Expected imports on the log, but found none"));
  }

  /**
   * Writes it down, and then deletes lists and mails that may tell more than they should. They are
   * made again of the latest run, if they were there; it can be repeated, and ended at any moment.
   *
   * @return the run of which lists were made again
   */
  Optional<String> write(Confidential mark) {
    return workspace.whileLocked("confidential", () -> written(mark));
  }

  private Optional<String> written(Confidential mark) {
    try (EventLog log = workspace.openLog()) {
      new PeopleFound(workspace).write(log, mark);
    }
    Optional<RunResult> latest =
        new RunStore(workspace.paths().runs())
            .latest()
            .filter(run -> Files.exists(workspace.paths().lists().resolve(run.id())));
    clear(workspace.paths().lists());
    clear(workspace.paths().outbox());
    latest.ifPresent(new Reporter(workspace)::publish);
    return latest.map(RunResult::id);
  }

  private static void clear(Path folder) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> runs = Files.list(folder)) {
      for (Path run : runs.toList()) {
        FolderTree.delete(run);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is marked, a line each. */
  List<String> lines() {
    try (EventLog log = filledLog()) {
      List<String> lines = new ArrayList<>();
      Discretion.standing(DiscretionReader.written(log.snapshot()))
          .forEach(mark -> lines.add(told(mark)));
      return lines.isEmpty() ? List.of("Nothing is marked as confidential.") : lines;
    }
  }

  /** Numbers and references, no details. */
  static String told(Confidential mark) {
    String whom =
        mark.references().isEmpty()
            ? ""
            : " because of " + joined(mark.references()) + (mark.numbers().isEmpty() ? "" : ":");
    return "%s on %s by %s (%s)%s %s"
        .formatted(
            mark.lifted() ? "Lifted" : "Confidential",
            mark.on(),
            mark.by(),
            mark.reason(),
            whom,
            joined(mark.numbers()))
        .strip();
  }

  private static String joined(List<?> some) {
    return some.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
