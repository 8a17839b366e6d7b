package withers.reconcile.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import withers.codec.finding.BasisJson;
import withers.codec.finding.CanonicalFindings;
import withers.codec.finding.RunJson;
import withers.finding.Basis;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.workspace.OwnerOnly;

/**
 * The folder in which runs are kept: a folder for each, readable by its owner alone, with {@value
 * #FINDINGS} (canonical), {@value #BASIS} (what it was made with) and {@value #RUN} (whole). All
 * are written whole or not at all, {@value #RUN} last; a folder without it is what a killed run
 * left. Writing the same run again changes nothing.
 */
public final class RunStore {
  static final String FINDINGS = "findings.jsonl";
  static final String RUN = "run.json";
  static final String LATEST = "latest";
  static final String BASIS = "basis.json";

  private final Path runs;

  /**
   * A store in a folder, which need not exist yet.
   *
   * @param runs as {@link withers.workspace.WorkspacePaths#runs()} gives it
   */
  public RunStore(Path runs) {
    this.runs = runs;
  }

  /**
   * Keeps a run. It becomes the latest, unless it looks back: to what was known earlier, or to a
   * day before the latest run's.
   *
   * @return its folder
   * @throws UncheckedIOException when it can't be written
   */
  public Path write(RunResult run) {
    return write(run, Optional.empty());
  }

  /** Keeps a run as {@link #write(RunResult)} does, and what it was made with. */
  Path write(RunResult run, Optional<Basis> basis) {
    try {
      Path folder = OwnerOnly.folder(folder(run.id()));
      if (basis.isPresent()) {
        byte[] made = (BasisJson.write(basis.get()) + "\n").getBytes(StandardCharsets.UTF_8);
        OwnerOnly.replace(folder.resolve(BASIS), made);
      }
      OwnerOnly.replace(
          folder.resolve(FINDINGS), out -> CanonicalFindings.write(run.findings(), out));
      OwnerOnly.replace(folder.resolve(RUN), out -> RunJson.write(run, out));
      if (!looksBack(run)) {
        byte[] latest = (run.id() + "\n").getBytes(StandardCharsets.UTF_8);
        OwnerOnly.replace(runs.resolve(LATEST), latest);
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean looksBack(RunResult run) {
    return run.knownBy().isPresent()
        || latestAsOf().filter(latest -> latest.isAfter(run.asOf())).isPresent();
  }

  /**
   * The run of that id, or empty when there is none.
   *
   * @throws withers.log.LogDamagedException when its file is not what was written
   * @throws UncheckedIOException when it can't be read
   */
  public Optional<RunResult> read(String id) {
    return read(folder(id).resolve(RUN), RunJson::read);
  }

  /** The numbers of the run of that id, or empty when there is none; fails as {@link #read}. */
  public Optional<RunOutline> outline(String id) {
    return read(folder(id).resolve(RUN), RunJson::readOutline);
  }

  /** The numbers of the latest run, or empty before the first; fails as {@link #read}. */
  public Optional<RunOutline> latestOutline() {
    return latestId().flatMap(this::outline);
  }

  /** What a run was made with; empty when it is not known, as of runs of earlier versions. */
  public Optional<Basis> basis(String id) {
    Path file = folder(id).resolve(BASIS);
    try {
      return Files.exists(file) ? BasisJson.read(Files.readString(file)) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The day that the latest run judged: a small part of its file. */
  private Optional<LocalDate> latestAsOf() {
    return latestId().flatMap(id -> read(folder(id).resolve(RUN), RunJson::readAsOf));
  }

  /** The latest run, or empty before the first; fails as {@link #read}. */
  public Optional<RunResult> latest() {
    return latestId().flatMap(this::read);
  }

  private Optional<String> latestId() {
    try {
      Path file = runs.resolve(LATEST);
      return Files.exists(file) ? Optional.of(Files.readString(file).strip()) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The folder of a run.
   *
   * @throws IllegalArgumentException when the id is no run's
   */
  public Path folder(String id) {
    if (!id.matches("[0-9a-z-]+")) {
      throw new IllegalArgumentException(
          "Expected a run's id of lower-case letters, digits and dashes, but found \"%s\""
              .formatted(id));
    }
    return runs.resolve(id);
  }

  private static <T> Optional<T> read(Path file, Function<InputStream, T> reader) {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      return Optional.of(reader.apply(in));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
