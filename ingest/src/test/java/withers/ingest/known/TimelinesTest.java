package withers.ingest.known;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.id.RecordKey;

/** Entries of a file of timelines, of any length. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TimelinesTest {

  private static final int ENTRIES = 700; // and as many lengths, beyond what is read at first
  private static final long SEED = 20310228;

  @TempDir Path folder;
  private final List<byte[]> written = new ArrayList<>();
  private final List<Integer> numbers = new ArrayList<>();
  private HashKey hashKey;
  private Stamp.Part part;

  @BeforeEach
  void write() throws IOException {
    Random random = new Random(SEED);
    Cache cache = new Cache(folder);
    hashKey = cache.newKey();
    try (Timelines.Writer writer = new Timelines.Writer(cache, hashKey, ENTRIES)) {
      for (int i = 0; i < ENTRIES; i++) {
        byte[] timeline = new byte[i];
        random.nextBytes(timeline);
        written.add(timeline);
        numbers.add(writer.add(key(i), timeline, false));
      }
      part = writer.finish();
    }
  }

  private static RecordKey key(int number) {
    return new RecordKey("K" + number);
  }

  @Test
  void entries_of_any_length_are_found_by_key_and_by_number() throws IOException {
    RecordHash hash = new RecordHash(hashKey);
    try (Timelines timelines = Timelines.open(folder, part)) {
      for (int i = 0; i < ENTRIES; i++) {
        byte[] name = Timelines.bytes(key(i));
        TimelineFiles.Entry found = timelines.find(name, hash.shortHash(name), 1000).orElseThrow();
        assertThat(found.number()).isEqualTo(1000 + numbers.get(i));
        assertThat(found.timeline()).isEqualTo(written.get(i));
        assertThat(timelines.key(numbers.get(i))).isEqualTo(key(i));
        assertThat(timelines.timeline(numbers.get(i))).isEqualTo(written.get(i));
      }
      byte[] unknown = Timelines.bytes(key(ENTRIES));
      assertThat(timelines.find(unknown, hash.shortHash(unknown), 0)).isEmpty();
    }
  }

  @Test
  void all_are_told_in_their_order() throws IOException {
    List<RecordKey> keys = new ArrayList<>();
    List<byte[]> told = new ArrayList<>();
    try (Timelines timelines = Timelines.open(folder, part)) {
      timelines.tell(
          (key, timeline) -> {
            keys.add(key);
            told.add(timeline);
            return keys.size();
          });
    }
    assertThat(keys).isEqualTo(IntStream.range(0, ENTRIES).mapToObj(TimelinesTest::key).toList());
    assertThat(told).usingElementComparator(Arrays::compare).isEqualTo(written);
  }

  @Test
  void damage_of_an_entry_or_of_the_index_is_noticed() throws IOException {
    flip(numbers.get(ENTRIES - 1) * Long.BYTES + 2 * Integer.BYTES + 10);
    flip(part.size() + 1);
    byte[] name = Timelines.bytes(key(0));
    try (Timelines timelines = Timelines.open(folder, part)) {
      assertThat(timelines.timeline(0)).isEqualTo(written.get(0));
      assertThatThrownBy(() -> timelines.timeline(numbers.get(ENTRIES - 1)))
          .isInstanceOf(UnrecognisableException.class);
      assertThatThrownBy(() -> timelines.find(name, new RecordHash(hashKey).shortHash(name), 0))
          .isInstanceOf(UnrecognisableException.class);
    }
  }

  private void flip(long at) throws IOException {
    try (FileChannel file =
        FileChannel.open(
            folder.resolve(part.name()), StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      ByteBuffer one = ByteBuffer.allocate(1);
      file.read(one, at);
      file.write(ByteBuffer.wrap(new byte[] {(byte) ~one.get(0)}), at);
    }
  }

  @Test
  void a_closed_file_makes_nothing_known() throws IOException {
    Timelines timelines = Timelines.open(folder, part);
    timelines.close();

    assertThatThrownBy(() -> timelines.timeline(0))
        .isInstanceOf(UnrecognisableException.class)
        .hasMessageContaining("a cache's file that can't be read");
  }
}
