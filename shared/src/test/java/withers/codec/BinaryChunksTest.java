package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.ChunkCodec;
import withers.log.LogDamagedException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BinaryChunksTest {

  private final ChunkCodec<ChipEvent> codec = Streams.CHIPS.codec();

  @Test
  void gives_back_every_event_in_order() {
    for (long seed = 0; seed < 300; seed++) {
      List<ChipEvent> events = new RandomEvents(seed).events((int) seed);
      assertThat(decoded(codec.encode(events))).as("seed %d", seed).isEqualTo(events);
    }
  }

  @Test
  void equal_events_give_equal_bytes() {
    assertThat(codec.encode(new RandomEvents(7).events(100)))
        .isEqualTo(codec.encode(new RandomEvents(7).events(100)));
  }

  @Test
  void damaged_bytes_are_refused_or_read_and_never_fail_otherwise() {
    byte[] whole = codec.encode(new RandomEvents(1).events(40));
    int refused = 0;
    for (long seed = 0; seed < 20_000; seed++) {
      refused += refuses(damaged(whole, new Random(seed))) ? 1 : 0;
    }
    assertThat(refused).isGreaterThan(5_000);
  }

  @Test
  void random_bytes_are_refused() {
    for (long seed = 0; seed < 5_000; seed++) {
      Random random = new Random(seed);
      byte[] bytes = new byte[2 + random.nextInt(200)];
      random.nextBytes(bytes);
      bytes[0] = BinaryChunks.FORMAT;
      bytes[1] = (byte) (1 + random.nextInt(100));
      assertThat(refuses(bytes)).as("seed %d", seed).isTrue();
    }
  }

  @Test
  void a_chunk_cut_off_anywhere_is_refused() {
    byte[] whole = codec.encode(new RandomEvents(2).events(20));
    for (int length = 0; length < whole.length; length++) {
      assertThat(refuses(Arrays.copyOf(whole, length))).as("cut at %d", length).isTrue();
    }
  }

  @Test
  void bytes_left_over_are_refused() {
    byte[] whole = codec.encode(new RandomEvents(3).events(1));
    assertThatThrownBy(() -> decoded(Arrays.copyOf(whole, whole.length + 1)))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage("Damaged chunk: bytes left over at byte %d", whole.length);
  }

  @Test
  void a_newer_format_is_refused() {
    byte[] newer = codec.encode(List.of());
    newer[0]++;
    assertThatThrownBy(() -> decoded(newer))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage(
            "Expected a chunk of format 1, but found format 2: it is damaged, or a newer program"
                + " wrote it");
  }

  @Test
  void a_failure_of_the_reader_is_its_own() {
    byte[] whole = codec.encode(new RandomEvents(4).events(1));
    IllegalArgumentException failure = new IllegalArgumentException("the reader's");
    assertThatThrownBy(
            () ->
                codec.decode(
                    whole,
                    event -> {
                      throw failure;
                    }))
        .isSameAs(failure);
  }

  private List<ChipEvent> decoded(byte[] chunk) {
    List<ChipEvent> events = new ArrayList<>();
    codec.decode(chunk, events::add);
    return events;
  }

  private boolean refuses(byte[] chunk) {
    try {
      decoded(chunk);
      return false;
    } catch (LogDamagedException expected) {
      assertThat(expected).message().isNotBlank();
      return true;
    }
  }

  private static byte[] damaged(byte[] whole, Random random) {
    byte[] bytes = whole.clone();
    for (int i = 0; i <= random.nextInt(3); i++) {
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    }
    return bytes;
  }
}
