package withers.log.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.id.ImportId;
import withers.log.LogStream;

/**
 * Which chips each large chunk of the log speaks of: a file for each import, beside the log, so
 * that who asks for a few chips need not decode all. Nothing depends on them: where one is missing,
 * damaged, or of another chunk than the log holds, the chunk is read. Not safe for several threads,
 * but for {@link #of} and {@link #ofImport}.
 */
public final class ChipFilters {

  /** No filters are made, and none read. */
  public static final ChipFilters NONE = new ChipFilters(Optional.empty(), Integer.MAX_VALUE);

  /** Fewer events are decoded soon enough: our judgement. */
  private static final int LEAST_EVENTS = 100;

  private static final FilterFile FILE = new FilterFile(Streams.CHIPS.partitions());

  /** Opens files for writing, empty, in a folder that need not exist. */
  @FunctionalInterface
  public interface Opening {
    FileChannel openAnew(Path folder, String name) throws IOException;
  }

  private record Folder(Path path, Opening opening) {
    Path file(ImportId id) {
      return path.resolve(id.toString());
    }

    Set<String> names() {
      String[] names = path.toFile().list();
      return names == null ? Set.of() : Set.of(names);
    }

    /** Writes a file whole or not at all, unless the machine stops: nobody waits for the disk. */
    void write(ImportId id, byte[] content) throws IOException {
      String fresh = id + ".new";
      try (FileChannel file = opening.openAnew(path, fresh)) {
        ByteBuffer bytes = ByteBuffer.wrap(content);
        while (bytes.hasRemaining()) {
          file.write(bytes);
        }
      }
      Files.move(path.resolve(fresh), file(id), StandardCopyOption.ATOMIC_MOVE);
    }
  }

  private final Optional<Folder> folder;
  private final int leastEvents;
  private final Map<ImportId, Map<Integer, Map<ChunkHead, ChipFilter>>> uncommitted =
      new HashMap<>();

  private ChipFilters(Optional<Folder> folder, int leastEvents) {
    this.folder = folder;
    this.leastEvents = leastEvents;
  }

  /** Filters in a folder of their own. */
  public static ChipFilters in(Path folder, Opening opening) {
    return in(folder, opening, LEAST_EVENTS);
  }

  /**
   * Filters in a folder of their own.
   *
   * @param leastEvents of how many events a chunk has a filter
   */
  public static ChipFilters in(Path folder, Opening opening, int leastEvents) {
    return new ChipFilters(Optional.of(new Folder(folder, opening)), leastEvents);
  }

  /** A filter of the chips that events speak of, if it is worth having. */
  Optional<ChipFilter> of(LogStream<?> stream, List<?> events) {
    if (events.size() < leastEvents || !isOfChips(stream)) {
      return Optional.empty();
    }
    Set<ChipNumber> chips = new LinkedHashSet<>();
    for (Object event : events) {
      if (event instanceof ChipEvent said) {
        said.subject().chip().ifPresent(chips::add);
      }
    }
    return Optional.of(ChipFilter.of(chips));
  }

  static boolean isOfChips(LogStream<?> stream) {
    return stream.name().equals(Streams.CHIPS.name());
  }

  /** Remembers the filter of a chunk until its import is committed. */
  void add(Chunk chunk, ChipFilter filter) {
    uncommitted
        .computeIfAbsent(chunk.place().importId(), id -> new HashMap<>())
        .computeIfAbsent(chunk.place().partition(), partition -> new HashMap<>())
        .put(chunk.head(), filter);
  }

  /** Forgets those of imports that were given up. */
  void clear() {
    uncommitted.clear();
  }

  /** Imports that brought large chunks and have no file, in their order. */
  List<Committed> missing(List<Committed> imports) {
    if (folder.isEmpty()) {
      return List.of();
    }
    Set<String> there = folder.get().names();
    return imports.stream()
        .filter(one -> !there.contains(one.marker().id().toString()) && hasLargeChunks(one))
        .toList();
  }

  private boolean hasLargeChunks(Committed one) {
    return one.contents().counts().entrySet().stream()
        .filter(count -> count.getKey().stream().equals(Streams.CHIPS.name()))
        .map(Map.Entry::getValue)
        .anyMatch(count -> count.events() >= leastEvents * count.chunks());
  }

  /** Writes an import's filters, if it has any. What can't be written is gone without. */
  void commit(ImportId id) {
    Optional.ofNullable(uncommitted.remove(id)).ifPresent(filters -> write(id, filters));
  }

  private void write(ImportId id, Map<Integer, Map<ChunkHead, ChipFilter>> filters) {
    folder.ifPresent(
        in -> {
          try {
            in.write(id, FILE.write(filters));
          } catch (IOException e) {
            // whoever would need it reads the chunks
          }
        });
  }

  /** The filters of an import's chunks in one partition; those of the others are not known. */
  Map<ChunkHead, ChipFilter> ofImport(ImportId id, LogStream<?> stream, int partition) {
    return isOfChips(stream)
        ? folder.flatMap(in -> read(in.file(id), partition)).orElse(Map.of())
        : Map.of();
  }

  private static Optional<Map<ChunkHead, ChipFilter>> read(Path file, int partition) {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try (FileChannel channel = FileChannel.open(file)) {
      return FILE.read(channel, partition);
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
