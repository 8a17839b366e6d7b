package withers.bench;

import com.github.luben.zstd.Zstd;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;

/**
 * What the machine does with the very bytes of the log, by itself: what no stage that leans on it
 * can be faster than. All on one thread, a partition's chunks at a time.
 */
final class Limits {

  /** As the log compresses. */
  private static final int LEVEL = 3;

  private static final String TABLE = "CREATE TABLE chunk(number INTEGER PRIMARY KEY, bytes BLOB)";
  private static final String INSERT = "INSERT INTO chunk(bytes) VALUES (?)";

  /** Takes a partition's chunks, and tells of how many bytes the time was. */
  @FunctionalInterface
  private interface Step {
    long of(List<byte[]> plain) throws Exception;
  }

  private Limits() {}

  static Work.Done copy(BenchWorld world, Stopwatch watch) throws Exception {
    return each(world, chunks -> watch.time(() -> sum(chunks, byte[]::clone)));
  }

  static Work.Done compress(BenchWorld world, Stopwatch watch) throws Exception {
    return each(
        world,
        chunks -> {
          watch.time(() -> sum(chunks, Limits::compressed));
          return Yardsticks.length(chunks);
        });
  }

  static Work.Done decompress(BenchWorld world, Stopwatch watch) throws Exception {
    return each(
        world,
        chunks -> {
          List<byte[]> small = chunks.stream().map(Limits::compressed).toList();
          return watch.time(() -> decompressed(small, chunks));
        });
  }

  static Work.Done writeFile(BenchWorld world, Stopwatch watch) throws Exception {
    Path file = Files.createTempFile(world.folder(), "limit", ".bin");
    try (FileChannel out = FileChannel.open(file, StandardOpenOption.WRITE)) {
      Work.Done done = each(world, chunks -> timed(watch, chunks, small -> append(out, small)));
      watch.time(() -> forced(out));
      return done;
    } finally {
      Files.delete(file);
    }
  }

  /** A row for each chunk, a transaction for each partition, synced as the log's are. */
  static Work.Done writeSqlite(BenchWorld world, Stopwatch watch) throws Exception {
    Path folder = Files.createTempDirectory(world.folder(), "limit");
    try (Connection database =
        DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("a.db"))) {
      prepare(database);
      return each(world, chunks -> timed(watch, chunks, small -> insert(database, small)));
    } finally {
      Folders.remove(folder);
    }
  }

  private static Work.Done each(BenchWorld world, Step step) throws Exception {
    long[] bytes = {0};
    Yardsticks.eachPartition(world, events -> bytes[0] += step.of(Yardsticks.encoded(events)));
    return new Work.Done(bytes[0], Map.of("bytes", bytes[0]));
  }

  private static long timed(Stopwatch watch, List<byte[]> chunks, Step step) throws Exception {
    List<byte[]> small = chunks.stream().map(Limits::compressed).toList();
    Callable<Long> write = () -> step.of(small);
    return watch.time(write);
  }

  private static byte[] compressed(byte[] plain) {
    return Zstd.compress(plain, LEVEL);
  }

  private static long decompressed(List<byte[]> small, List<byte[]> plain) {
    long bytes = 0;
    for (int i = 0; i < small.size(); i++) {
      bytes += Zstd.decompress(small.get(i), plain.get(i).length).length;
    }
    return bytes;
  }

  private static long sum(List<byte[]> chunks, Function<byte[], byte[]> made) {
    return chunks.stream().mapToLong(chunk -> made.apply(chunk).length).sum();
  }

  private static long append(FileChannel out, List<byte[]> chunks) throws IOException {
    for (byte[] chunk : chunks) {
      ByteBuffer rest = ByteBuffer.wrap(chunk);
      while (rest.hasRemaining()) {
        out.write(rest);
      }
    }
    return Yardsticks.length(chunks);
  }

  private static long forced(FileChannel out) throws IOException {
    out.force(true);
    return out.size();
  }

  private static void prepare(Connection database) throws SQLException {
    try (Statement statement = database.createStatement()) {
      statement.execute("PRAGMA journal_mode=WAL");
      statement.execute("PRAGMA synchronous=FULL");
      statement.execute(TABLE);
    }
    database.setAutoCommit(false);
  }

  private static long insert(Connection database, List<byte[]> chunks) throws SQLException {
    try (PreparedStatement insert = database.prepareStatement(INSERT)) {
      for (byte[] chunk : chunks) {
        insert.setBytes(1, chunk);
        insert.addBatch();
      }
      insert.executeBatch();
    }
    database.commit();
    return Yardsticks.length(chunks);
  }
}
