package withers.ingest.inbox;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.receipt.FileState;

/**
 * Looks through an inbox: files for all, and a folder for each source that wants one, named after
 * it. Nothing outside the inbox is touched: links that lead out are refused.
 */
public final class Inbox {

  private static final Set<String> HALF_COPIED =
      Set.of("part", "partial", "tmp", "temp", "download", "crdownload");
  private static final String LOCK = "~$";

  private final Path folder;
  private final Path real;
  private final Profiles profiles;
  private final List<InboxFile> files = new ArrayList<>();
  private final List<String> passedOver = new ArrayList<>();
  private final List<String> left = new ArrayList<>();
  private final List<String> refusals = new ArrayList<>();

  private Inbox(Path folder, Profiles profiles) throws IOException {
    this.folder = folder;
    this.real = folder.toRealPath();
    this.profiles = profiles;
  }

  /** Looks through the inbox, without opening any file. */
  public static Contents look(Path folder, Profiles profiles) {
    try {
      Inbox inbox = new Inbox(folder, profiles);
      inbox.look(folder, Optional.empty());
      return new Contents(inbox.files, inbox.passedOver, inbox.left, inbox.refusals);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Files that somebody has named, wherever they lie; those in the inbox are known by their path
   * there, all others by their whole path. A name that leads to no file is kept, for the reader to
   * refuse.
   */
  public static Contents given(List<Path> files, Path inbox, Profiles profiles) {
    return new Contents(
        files.stream().map(file -> given(file, inbox, profiles)).toList(),
        List.of(),
        List.of(),
        List.of());
  }

  private static InboxFile given(Path file, Path inbox, Profiles profiles) {
    Path whole = file.toAbsolutePath().normalize();
    Optional<SourceProfile> source =
        profiles.all().stream()
            .filter(profile -> inbox.resolve(profile.id().value()).equals(whole.getParent()))
            .findFirst();
    Path shown = whole.startsWith(inbox) ? inbox.relativize(whole) : whole;
    try {
      return new InboxFile(
          file, shown.toString().replace('\\', '/'), source, FileState.ofAny(whole));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void look(Path at, Optional<SourceProfile> source) throws IOException {
    List<Path> entries;
    try (Stream<Path> all = Files.list(at)) {
      entries = all.sorted().toList();
    }
    for (Path entry : entries) {
      take(entry, source);
    }
  }

  private void take(Path entry, Optional<SourceProfile> source) throws IOException {
    if (isPassedOver(entry.getFileName().toString())) {
      passedOver.add(shown(entry));
    } else if (isInside(entry)) {
      takeInside(entry, source);
    }
  }

  private static boolean isPassedOver(String name) {
    String suffix = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return name.startsWith(".")
        || name.startsWith(LOCK)
        || name.endsWith("~")
        || HALF_COPIED.contains(suffix);
  }

  private boolean isInside(Path entry) throws IOException {
    if (Files.isSymbolicLink(entry) && !Files.exists(entry)) {
      refusals.add(refused(entry, "a link that leads nowhere"));
      return false;
    }
    if (!entry.toRealPath().startsWith(real)) {
      refusals.add(refused(entry, "a link that leads out of it"));
      return false;
    }
    return true;
  }

  private String refused(Path entry, String found) {
    return "Expected files and folders in the inbox, but found %s (%s): put the file itself there. It was not followed."
        .formatted(found, shown(entry));
  }

  private void takeInside(Path entry, Optional<SourceProfile> source) throws IOException {
    if (Files.isRegularFile(entry)) {
      files.add(new InboxFile(entry, shown(entry), source, FileState.of(entry)));
    } else if (!Files.isDirectory(entry)) {
      left.add(left(entry, "something else", "take it away"));
    } else if (source.isPresent()) {
      left.add(left(entry, "a folder in a source's folder", "put its files beside it"));
    } else {
      takeFolder(entry);
    }
  }

  private void takeFolder(Path entry) throws IOException {
    String name = entry.getFileName().toString();
    Optional<SourceProfile> source =
        profiles.all().stream().filter(profile -> profile.id().value().equals(name)).findFirst();
    if (source.isPresent()) {
      look(entry, source);
    } else {
      left.add(
          left(
              entry, "a folder that no source is named after", "name it after a file in sources/"));
    }
  }

  private String left(Path entry, String found, String advice) {
    return "Expected files, and folders of sources, but found %s (%s): %s. It was left as it is."
        .formatted(found, shown(entry), advice);
  }

  private String shown(Path entry) {
    return folder.relativize(entry).toString().replace('\\', '/');
  }
}
