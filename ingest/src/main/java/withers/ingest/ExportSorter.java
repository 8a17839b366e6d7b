package withers.ingest;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import withers.id.SourceId;
import withers.ingest.file.ExportFile;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Packing;
import withers.ingest.pack.Signature;
import withers.ingest.profile.ExportDateRule;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.Join;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.source.Extent;
import withers.source.InputRefusedException;

/**
 * Sorts files into exports: those of one source, date and extent are one. A quarantine file that
 * comes back stands for itself.
 */
public final class ExportSorter {

  /**
   * @param corrections name of a quarantine file; empty for exports, which come before
   */
  private record Together(SourceId source, LocalDate date, String corrections, String extent)
      implements Comparable<Together> {
    private static final Comparator<Together> ORDER =
        Comparator.comparing(Together::source)
            .thenComparing(Together::date)
            .thenComparing(Together::corrections)
            .thenComparing(Together::extent);

    @Override
    public int compareTo(Together other) {
      return ORDER.compare(this, other);
    }
  }

  private record Found(
      SourceProfile profile,
      LocalDate date,
      Extent extent,
      Optional<FileFormat> corrections,
      String baseName,
      ExportFile file) {

    boolean isJoined() {
      return corrections.isEmpty() && !profile.joinsOf(baseName).isEmpty();
    }

    Together place() {
      return new Together(
          profile.id(), date, corrections.isPresent() ? file.name() : "", extent.toString());
    }
  }

  private final Profiles profiles;
  private final Optional<SourceProfile> named;
  private final ExportDates dates;
  private final CorrectionsFinder corrections;
  private final Map<Together, List<Found>> found = new TreeMap<>();
  private final Set<SourceId> doubtful = new HashSet<>();
  private final List<String> refusals = new ArrayList<>();
  private final Map<Path, String> refused = new HashMap<>();
  private final List<String> unrecognised = new ArrayList<>();

  /**
   * @param named the source of all files, when the command line names it
   * @param exportDate the date of all files, when the command line gives it
   * @param window the window of all files, when the command line gives it
   */
  public ExportSorter(
      Profiles profiles,
      Optional<SourceProfile> named,
      Optional<LocalDate> exportDate,
      Optional<Extent.Window> window) {
    this.profiles = profiles;
    this.named = named;
    this.dates = new ExportDates(exportDate, window);
    this.corrections = new CorrectionsFinder(profiles, exportDate);
  }

  /** Sorts files whose sources are known by their names alone, as {@link #sortAll} does. */
  public SortedExports sort(List<Path> files) {
    return sortAll(files.stream().map(Incoming::of).toList());
  }

  /**
   * Looks through files and sorts them. Where one file of a source can't be taken, no export of
   * that source is: it might belong to any of them.
   */
  public SortedExports sortAll(List<Incoming> files) {
    files.stream().sorted(Comparator.comparing(Incoming::path)).forEach(this::take);
    List<ExportSet> sets =
        found.values().stream()
            .filter(together -> !isDoubtful(together.get(0)))
            .flatMap(together -> set(together).stream())
            .toList();
    return new SortedExports(sets, refusals, refused, unrecognised);
  }

  private boolean isDoubtful(Found one) {
    return one.corrections.isEmpty() && doubtful.contains(one.profile.id());
  }

  private void take(Incoming file) {
    if (!isCorrections(file)) {
      takeExport(file);
    }
  }

  private boolean isCorrections(Incoming file) {
    try {
      Optional<CorrectionsFinder.Corrections> back =
          Files.isRegularFile(file.path())
              ? corrections.find(file, named.or(file::source))
              : Optional.empty();
      back.map(ExportSorter::found).ifPresent(this::add);
      return back.isPresent();
    } catch (InputRefusedException refused) {
      refuse(file.path(), List.of(), String.valueOf(refused.getMessage()));
      return true;
    }
  }

  private static Found found(CorrectionsFinder.Corrections back) {
    return new Found(
        back.profile(),
        back.date(),
        new Extent.Changes(),
        Optional.of(back.format()),
        back.file().name(),
        back.file());
  }

  private void takeExport(Incoming file) {
    List<SourceProfile> recognising =
        named.or(file::source).map(List::of).orElseGet(() -> profiles.recognising(file.name()));
    if (recognising.isEmpty()) {
      takeEntries(file.path(), file.name());
    } else if (recognising.size() > 1) {
      refuse(file.path(), recognising, ambiguous(file.name(), recognising));
    } else {
      take(file.path(), file.name(), recognising.get(0));
    }
  }

  /** An archive whose name says nothing may hold files whose names do. */
  private void takeEntries(Path file, String name) {
    List<PackedFile> entries = entries(file);
    entries.forEach(this::takeEntry);
    if (entries.isEmpty()) {
      unrecognised.add(name);
    }
  }

  private List<PackedFile> entries(Path file) {
    try {
      return Files.isRegularFile(file) && Signature.of(file) == Signature.ZIP
          ? PackedFile.in(file).stream().filter(one -> one.packing() == Packing.ZIP).toList()
          : List.of();
    } catch (InputRefusedException refused) {
      refuse(file, List.of(), String.valueOf(refused.getMessage()));
      return List.of();
    }
  }

  private void takeEntry(PackedFile entry) {
    List<SourceProfile> recognising = profiles.recognising(entry.baseName());
    if (recognising.isEmpty()) {
      unrecognised.add(entry.name());
      refused.putIfAbsent(entry.path(), "No profile recognises " + entry.name());
    } else if (recognising.size() > 1) {
      refuse(entry.path(), recognising, ambiguous(entry.name(), recognising));
    } else {
      take(entry, recognising.get(0));
    }
  }

  private static String ambiguous(String name, List<SourceProfile> recognising) {
    return "Expected one profile that recognises a file, but found %d (%s: %s): make their \"files\" patterns narrower, or name one with --source. Nothing was changed."
        .formatted(
            recognising.size(),
            name,
            recognising.stream().map(p -> p.id().value()).collect(Collectors.joining(", ")));
  }

  private void refuse(Path path, List<SourceProfile> profiles, String message) {
    profiles.forEach(profile -> doubtful.add(profile.id()));
    refusals.add(message);
    refused.putIfAbsent(path, message);
  }

  private void take(Path path, String name, SourceProfile profile) {
    try {
      if (!Files.isRegularFile(path)) {
        throw new InputRefusedException(
            "Expected a file, but found none (%s): see that the path is right. Nothing was changed."
                .formatted(name));
      }
      PackedFile.in(path).forEach(file -> take(file, profile));
    } catch (InputRefusedException refused) {
      refuse(path, List.of(profile), String.valueOf(refused.getMessage()));
    }
  }

  private void take(PackedFile packed, SourceProfile profile) {
    try {
      ExportFile file = ExportFile.inspect(packed, profile.format());
      LocalDate date = dates.date(profile, file);
      Extent extent = dates.extent(profile, file);
      add(new Found(profile, date, extent, Optional.empty(), packed.baseName(), file));
    } catch (InputRefusedException refused) {
      refuse(packed.path(), List.of(profile), String.valueOf(refused.getMessage()));
    }
  }

  private void add(Found one) {
    List<Found> together = found.computeIfAbsent(one.place(), p -> new ArrayList<>());
    // The same file twice, under two names, is one.
    if (together.stream().noneMatch(other -> other.file.sha256().equals(one.file.sha256()))) {
      together.add(one);
    }
  }

  private Optional<ExportSet> set(List<Found> together) {
    List<String> lacking = lacking(together);
    if (lacking.isEmpty()) {
      return Optional.of(whole(together));
    }
    refusals.add(
        "Expected all files of an export of %s, but found none for %s (%s): add what is missing, and give them together. Nothing was changed."
            .formatted(
                together.get(0).date,
                String.join(", ", lacking),
                together.stream().map(one -> one.file.name()).collect(Collectors.joining(", "))));
    return Optional.empty();
  }

  /** The patterns of files without which the others are no export. */
  private static List<String> lacking(List<Found> together) {
    SourceProfile profile = together.get(0).profile;
    List<String> lacking = new ArrayList<>();
    if (together.get(0).corrections.isEmpty()) {
      if (together.stream().allMatch(Found::isJoined)) {
        lacking.add("files: " + String.join(", ", profile.files()));
      }
      profile.joins().stream()
          .filter(join -> joined(join, together).isEmpty())
          .map(join -> "join %s: %s".formatted(join.name(), String.join(", ", join.files())))
          .forEach(lacking::add);
    }
    return lacking;
  }

  private static List<JoinedFile> joined(Join join, List<Found> together) {
    return together.stream()
        .filter(
            one ->
                join.isInTheSameFile()
                    ? !one.isJoined()
                    : one.profile.joinsOf(one.baseName).contains(join))
        .map(one -> new JoinedFile(join, one.file))
        .toList();
  }

  private static List<JoinedFile> joined(List<Found> together) {
    Found first = together.get(0);
    return first.corrections.isPresent()
        ? List.of()
        : first.profile.joins().stream().flatMap(join -> joined(join, together).stream()).toList();
  }

  private ExportSet whole(List<Found> together) {
    Found first = together.get(0);
    boolean dateColumn =
        first.corrections.isEmpty()
            && dates.given().isEmpty()
            && first.profile.exportDate().from() == ExportDateRule.From.COLUMN;
    return new ExportSet(
        first.profile,
        first.date,
        first.extent,
        dateColumn,
        first.corrections,
        together.stream().filter(one -> !one.isJoined()).map(Found::file).toList(),
        joined(together));
  }
}
