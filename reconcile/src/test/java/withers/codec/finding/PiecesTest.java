package withers.codec.finding;

import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(60)
class PiecesTest {

  @Test
  void elements_come_in_their_order_whoever_makes_them() {
    for (int size :
        List.of(0, 1, Pieces.SIZE - 1, Pieces.SIZE, Pieces.SIZE + 1, 20 * Pieces.SIZE + 7)) {
      List<Integer> all = IntStream.range(0, size).boxed().toList();
      for (int threads = 1; threads <= 4; threads++) {
        assertThat(written(all, threads))
            .as("%d elements, %d threads", size, threads)
            .isEqualTo(all.stream().map(String::valueOf).collect(joining(";")));
      }
    }
  }

  @Test
  void a_piece_that_takes_long_holds_up_those_after_it() throws Exception {
    List<Integer> all = IntStream.range(0, 2 * Pieces.SIZE).boxed().toList();
    CountDownLatch secondIsMade = new CountDownLatch(1);
    ByteArrayOutputStream out = new ByteArrayOutputStream();

    new Pieces(2)
        .write(
            all,
            some -> {
              if (some.get(0) == 0) {
                await(secondIsMade);
                return bytes("first");
              }
              secondIsMade.countDown();
              return bytes("second");
            },
            (byte) ' ',
            out);

    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("first second");
  }

  /** What is not yet written is held in memory. */
  @Test
  void no_more_than_two_pieces_for_each_thread_are_ahead() {
    List<Integer> all = IntStream.range(0, 50 * Pieces.SIZE).boxed().toList();
    AtomicInteger made = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    AtomicInteger written = new AtomicInteger();
    OutputStream slow =
        new OutputStream() {
          @Override
          public void write(int separator) {
            written.incrementAndGet();
          }

          @Override
          public void write(byte[] piece) {
            Thread.onSpinWait();
          }
        };

    new Pieces(2)
        .write(
            all,
            some -> {
              most.accumulateAndGet(made.incrementAndGet() - written.get(), Math::max);
              return bytes("x");
            },
            (byte) ' ',
            slow);

    assertThat(made.get()).isEqualTo(50);
    // four, and the one that is being written, whose separator comes with the next
    assertThat(most.get()).isLessThanOrEqualTo(6);
  }

  @Test
  void the_first_in_order_that_can_t_be_made_is_told_of_and_nothing_after_it_is_written() {
    List<Integer> all = IntStream.range(0, 10 * Pieces.SIZE).boxed().toList();
    for (int threads = 1; threads <= 3; threads++) {
      Pieces pieces = new Pieces(threads);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      assertThatThrownBy(() -> pieces.write(all, PiecesTest::upToTheThird, (byte) ' ', out))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("no piece from 768");
      assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("0 256 512");
    }
  }

  private static byte[] upToTheThird(List<Integer> some) {
    if (some.get(0) >= 3 * Pieces.SIZE) {
      throw new IllegalArgumentException("no piece from " + some.get(0));
    }
    return bytes("" + some.get(0));
  }

  @Test
  void a_stream_that_fails_ends_it() {
    List<Integer> all = IntStream.range(0, 10 * Pieces.SIZE).boxed().toList();
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int one) throws IOException {
            throw new IOException("no space left");
          }
        };
    for (int threads = 1; threads <= 2; threads++) {
      Pieces pieces = new Pieces(threads);
      assertThatThrownBy(() -> pieces.write(all, some -> bytes("x"), (byte) ' ', full))
          .isInstanceOf(UncheckedIOException.class)
          .hasRootCauseMessage("no space left");
    }
  }

  @Test
  void there_is_at_least_one_thread() {
    assertThatThrownBy(() -> new Pieces(0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Expected at least one thread, but found 0");
  }

  private static String written(List<Integer> all, int threads) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new Pieces(threads)
        .write(
            all,
            some -> bytes(some.stream().map(String::valueOf).collect(joining(";"))),
            (byte) ';',
            out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
