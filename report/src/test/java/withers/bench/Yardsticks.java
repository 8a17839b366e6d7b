package withers.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import withers.bench.BenchWorld.Month;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.Profiles;
import withers.ingest.sniff.Delimiter;
import withers.log.EventLog;
import withers.log.LogSnapshot;

/** The plainest work on the same bytes: what no import and no replay can be faster than. */
final class Yardsticks {

  /** As the embedded log cuts its chunks. */
  private static final int CHUNK = 1000;

  private static final int BUFFER = 1 << 16;

  private Yardsticks() {}

  /** Reads all bytes of the first month and counts lines; headers don't count. */
  static Work.Done readLines(BenchWorld world, Stopwatch watch) throws Exception {
    List<Path> files = world.exports(Month.FIRST);
    long rows = watch.time(() -> rows(files));
    return new Work.Done(rows, Map.of("bytes", files.stream().mapToLong(BenchWorld::size).sum()));
  }

  /** How many rows these files have: all their lines but the headers. */
  static long rows(List<Path> files) throws IOException {
    long lines = 0;
    for (Path file : files) {
      lines += lines(file) - 1;
    }
    return lines;
  }

  private static long lines(Path file) throws IOException {
    byte[] buffer = new byte[BUFFER];
    long lines = 0;
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        for (int i = 0; i < read; i++) {
          lines += buffer[i] == '\n' ? 1 : 0;
        }
      }
    }
    return lines;
  }

  /** Parses the first month's files, looking at every cell. */
  static Work.Done parse(BenchWorld world, Stopwatch watch) throws Exception {
    Profiles profiles =
        Profiles.read(world.workspace().paths().sources(), world.workspace().directory());
    long rows = 0;
    long characters = 0;
    for (Path file : world.exports(Month.FIRST)) {
      CSVFormat format = format(profiles, file);
      Parsed parsed = watch.time(() -> parse(file, format));
      rows += parsed.records - 1;
      characters += parsed.characters;
    }
    return new Work.Done(rows, Map.of("characters", characters));
  }

  private static CSVFormat format(Profiles profiles, Path file) {
    FileFormat written = profiles.recognising(file.getFileName().toString()).get(0).format();
    Delimiter delimiter = written.text().delimiter().orElse(Delimiter.COMMA);
    return CSVFormat.RFC4180.builder().setDelimiter(delimiter.sign()).get();
  }

  private record Parsed(long records, long characters) {}

  private static Parsed parse(Path file, CSVFormat format) throws IOException {
    long records = 0;
    long characters = 0;
    try (BufferedReader text = Files.newBufferedReader(file);
        CSVParser parser = format.parse(text)) {
      for (CSVRecord row : parser) {
        records++;
        for (String cell : row) {
          characters += cell.length();
        }
      }
    }
    return new Parsed(records, characters);
  }

  /** Encodes the log's events into chunks, partition by partition, in memory. */
  static Work.Done encode(BenchWorld world, Stopwatch watch) throws Exception {
    long[] sums = {0, 0};
    eachPartition(
        world,
        events -> {
          sums[0] += events.size();
          sums[1] += watch.time(() -> length(encoded(events)));
        });
    return new Work.Done(sums[0], Map.of("bytes", sums[1]));
  }

  /** Decodes such chunks, in memory. */
  static Work.Done decode(BenchWorld world, Stopwatch watch) throws Exception {
    long[] sums = {0, 0};
    eachPartition(
        world,
        events -> {
          List<byte[]> chunks = encoded(events);
          sums[0] += watch.time(() -> decoded(chunks));
          sums[1] += length(chunks);
        });
    return new Work.Done(sums[0], Map.of("bytes", sums[1]));
  }

  /** Takes a partition's events. */
  @FunctionalInterface
  interface Partition {
    void take(List<ChipEvent> events) throws Exception;
  }

  /** Hands the log's events over, a partition at a time. */
  static void eachPartition(BenchWorld world, Partition partition) throws Exception {
    try (EventLog log = world.workspace().openLog()) {
      LogSnapshot snapshot = log.snapshot();
      for (Streams.Place place : places()) {
        partition.take(events(snapshot, place));
      }
    }
  }

  private static List<Streams.Place> places() {
    return Replays.places().toList();
  }

  private static List<ChipEvent> events(LogSnapshot log, Streams.Place place) {
    List<ChipEvent> events = new ArrayList<>();
    log.replay(place.stream(), place.partition(), (event, marker) -> events.add(event));
    return events;
  }

  static List<byte[]> encoded(List<ChipEvent> events) {
    List<byte[]> chunks = new ArrayList<>();
    for (int from = 0; from < events.size(); from += CHUNK) {
      List<ChipEvent> some = events.subList(from, Math.min(events.size(), from + CHUNK));
      chunks.add(Streams.CHIPS.codec().encode(some));
    }
    return chunks;
  }

  private static long decoded(List<byte[]> chunks) {
    long[] events = {0};
    for (byte[] chunk : chunks) {
      Streams.CHIPS.codec().decode(chunk, event -> events[0] += event.origin() == null ? 0 : 1);
    }
    return events[0];
  }

  static long length(List<byte[]> chunks) {
    return chunks.stream().mapToLong(chunk -> chunk.length).sum();
  }
}
