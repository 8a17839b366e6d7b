package withers.ingest.known;

import java.io.IOException;
import java.io.PushbackInputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.file.ExportFile;

/**
 * The last full export of each source, kept in a folder so that the next one need not be read
 * whole. Disposable: whatever is missing, damaged, of another log or of other circumstances is not
 * used.
 */
public final class KnownExports {

  private final Path folder;

  /**
   * What is kept in a folder.
   *
   * @param folder made when something is kept
   */
  public KnownExports(Path folder) {
    this.folder = folder;
  }

  /**
   * Compares an export with the last one of its source.
   *
   * @param parent the source's newest marker
   * @param date its export date
   * @param early is told at once of records that are not recognised, when there is one file
   * @return what is known; empty when nothing is that could be gone by
   */
  public Optional<Recognised> recognise(
      SourceId source,
      Circumstances circumstances,
      ImportId parent,
      LocalDate date,
      List<ExportFile> files,
      Strangers early) {
    try {
      Cache cache = cache(source);
      Optional<Stamp> kept = cache.read().filter(stamp -> fits(stamp, circumstances, parent, date));
      if (kept.isEmpty() || !files.stream().allMatch(circumstances::areThoseOf)) {
        return Optional.empty();
      }
      return Optional.of(
          recognise(
              new KnownExport(cache, kept.get(), circumstances),
              files,
              files.size() == 1 ? early : Strangers.IGNORED));
    } catch (IOException | UncheckedIOException | UnrecognisableException unusable) {
      return Optional.empty();
    }
  }

  private static Recognised recognise(KnownExport known, List<ExportFile> files, Strangers early) {
    try {
      return recognise(known, files, new BitSet(), early);
    } catch (UncheckedIOException | UnrecognisableException unusable) {
      known.close();
      throw unusable;
    }
  }

  private static boolean fits(
      Stamp stamp, Circumstances circumstances, ImportId parent, LocalDate date) {
    return stamp.words().equals(circumstances.inWords())
        && stamp.parent().equals(parent)
        && date.isAfter(stamp.newest());
  }

  /** Files are compared side by side. */
  static Recognised recognise(
      KnownExport known, List<ExportFile> files, BitSet barred, Strangers early) {
    List<Recognition> recognitions =
        IntStream.range(0, files.size())
            .parallel()
            .mapToObj(i -> recognise(known, files.get(i), expected(known, i), barred, early))
            .toList();
    return new Recognised(known, files, recognitions, barred);
  }

  private static int expected(KnownExport known, int file) {
    List<Integer> starts = known.stamp().fileStarts();
    return file < starts.size() ? starts.get(file) : 0;
  }

  private static Recognition recognise(
      KnownExport known, ExportFile file, int expected, BitSet barred, Strangers early) {
    RecordHash hash = known.newHash();
    FileStart start = known.stamp().start();
    try (PushbackInputStream in = new PushbackInputStream(file.open())) {
      early.begin(known, start.require(in, hash), start.line());
      RecordScanner records = known.circumstances().scanner(in, start.length(), start.line());
      Recognition found =
          new Recogniser(known.order(), known.index(), barred, hash, expected, early)
              .compare(records);
      if (records.size() != file.size()) {
        throw new UnrecognisableException("a file that changed while it was read");
      }
      return found;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      early.end();
    }
  }

  /** Takes note of an export that is read whole. */
  public Learner learner(SourceId source, Circumstances circumstances) {
    return new Learner(cache(source), circumstances);
  }

  /** Forgets a source's last export. */
  public void forget(SourceId source) throws IOException {
    cache(source).clear();
  }

  private Cache cache(SourceId source) {
    return new Cache(folder.resolve(source.value()));
  }
}
