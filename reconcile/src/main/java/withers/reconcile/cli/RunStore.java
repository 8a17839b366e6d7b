package withers.reconcile.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import withers.codec.finding.BasisJson;
import withers.codec.finding.CanonicalFindings;
import withers.codec.finding.OutlineJson;
import withers.codec.finding.Pieces;
import withers.codec.finding.RunJson;
import withers.finding.Basis;
import withers.finding.Finding;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.workspace.OwnerOnly;

/**
 * The folder in which runs are kept: a folder for each, readable by its owner alone, with {@value
 * #FINDINGS} (canonical), {@value #BASIS} (what it was made with), {@value #OUTLINE} (in numbers)
 * and {@value #RUN} (whole). All are written whole or not at all, {@value #RUN} last; a folder
 * without it is what a killed run left. Writing the same run again changes nothing.
 */
public final class RunStore {
  static final String FINDINGS = "findings.jsonl";
  static final String RUN = "run.json";
  static final String LATEST = "latest";
  static final String BASIS = "basis.json";
  static final String OUTLINE = "outline.json";
  private static final String DRAFT = ".findings";

  private final Path runs;
  private final Pieces pieces;

  /**
   * A store in a folder, which need not exist yet.
   *
   * @param runs as {@link withers.workspace.WorkspacePaths#runs()} gives it
   */
  public RunStore(Path runs) {
    this(runs, Pieces.ALONE);
  }

  /**
   * The same, that writes long runs on several threads.
   *
   * @param runs as {@link withers.workspace.WorkspacePaths#runs()} gives it
   * @param pieces how long lists are made into bytes
   */
  RunStore(Path runs, Pieces pieces) {
    this.runs = runs;
    this.pieces = pieces;
  }

  /**
   * Keeps a run. It becomes the latest, unless it looks back: to what was known earlier, or to a
   * day before the latest run's.
   *
   * @return its folder
   * @throws UncheckedIOException when it can't be written
   */
  public Path write(RunResult run) {
    try (Draft draft = draft(run.findings())) {
      return write(run, Optional.empty(), draft);
    }
  }

  /**
   * Keeps a run as {@link #write(RunResult)} does, and what it was made with.
   *
   * @param draft of its findings, taken over
   */
  Path write(RunResult run, Basis basis, Draft draft) {
    return write(run, Optional.of(basis), draft);
  }

  private Path write(RunResult run, Optional<Basis> basis, Draft draft) {
    try {
      Path folder = OwnerOnly.folder(folder(run.id()));
      if (basis.isPresent()) {
        OwnerOnly.replace(folder.resolve(BASIS), line(BasisJson.write(basis.get())));
      }
      draft.putInPlace(folder.resolve(FINDINGS));
      OwnerOnly.replace(folder.resolve(RUN), out -> writeWhole(run, folder, out));
      if (!looksBack(run)) {
        OwnerOnly.replace(runs.resolve(LATEST), line(run.id()));
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void writeWhole(RunResult run, Path folder, OutputStream out) throws IOException {
    RunOutline outline = RunJson.write(run, out, pieces);
    OwnerOnly.replace(folder.resolve(OUTLINE), line(OutlineJson.write(outline)));
  }

  private static byte[] line(String text) {
    return (text + "\n").getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Findings in canonical form, written before the run has a name: it is named by them. Closing it
   * does away with what no run took over.
   *
   * @param file out of the way of all runs
   */
  record Draft(Path file, CanonicalFindings canonical) implements AutoCloseable {

    private void putInPlace(Path place) throws IOException {
      Files.move(file, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    @Override
    public void close() {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /**
   * Writes findings in canonical form, for a run that is to be written with them.
   *
   * @param findings in their total order
   */
  Draft draft(List<Finding> findings) {
    List<CanonicalFindings> written = new ArrayList<>();
    try {
      Path file = OwnerOnly.folder(runs).resolve(DRAFT);
      OwnerOnly.replace(file, out -> written.add(CanonicalFindings.of(findings, out, pieces)));
      return new Draft(file, written.get(0));
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

  /**
   * The numbers of the run of that id, or empty when there is none; fails as {@link #read}. Runs of
   * earlier versions have none of their own: theirs are counted.
   */
  public Optional<RunOutline> outline(String id) {
    Path run = folder(id).resolve(RUN);
    return Files.exists(run)
        ? kept(id).or(() -> read(run, RunJson::readOutline))
        : Optional.empty();
  }

  private Optional<RunOutline> kept(String id) {
    return text(folder(id).resolve(OUTLINE))
        .flatMap(OutlineJson::read)
        .filter(one -> one.id().equals(id));
  }

  /** The numbers of the latest run, or empty before the first; fails as {@link #read}. */
  public Optional<RunOutline> latestOutline() {
    return latestId().flatMap(this::outline);
  }

  /** What a run was made with; empty when it is not known, as of runs of earlier versions. */
  public Optional<Basis> basis(String id) {
    return text(folder(id).resolve(BASIS)).flatMap(BasisJson::read);
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
    return text(runs.resolve(LATEST)).map(String::strip);
  }

  /** Of a damaged one, something that is no more than that. */
  private static Optional<String> text(Path file) {
    try {
      return Files.exists(file)
          ? Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
          : Optional.empty();
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
