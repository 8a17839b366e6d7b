package withers.codec.finding;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.waiting.Waiting;

/**
 * Long lists as bytes, made piece by piece on several threads while earlier pieces are written, in
 * the list's order. No more than two pieces for each thread are held at a time.
 *
 * @param threads that make pieces, from 1; with one, who asks for it makes them
 */
public record Pieces(int threads) {
  /** Made by who asks for it. */
  public static final Pieces ALONE = new Pieces(1);

  /** Enough that handing over costs nothing, and few enough to take little memory. */
  static final int SIZE = 256;

  private static final int HELD_FOR_EACH_THREAD = 2;
  private static final Waiting WAITING =
      new Waiting("Writing a run was interrupted", "A part of a run could not be written");

  public Pieces {
    if (threads < 1) {
      throw new IllegalArgumentException("Expected at least one thread, but found " + threads);
    }
  }

  /**
   * Writes all elements.
   *
   * @param all does not change meanwhile, and is safe for several threads
   * @param making gives some of the elements as bytes; safe for several threads
   * @param separator stands between pieces
   * @throws UncheckedIOException when the stream fails
   * @throws RuntimeException what the making of the first piece that failed threw
   */
  <T> void write(
      List<T> all, Function<? super List<T>, byte[]> making, byte separator, OutputStream out) {
    Joined joined = new Joined(out, separator);
    if (threads == 1 || all.size() <= SIZE) {
      pieces(all).map(making).forEach(joined::write);
    } else {
      writeAhead(pieces(all), making, joined);
    }
  }

  private static <T> Stream<List<T>> pieces(List<T> all) {
    return IntStream.iterate(0, from -> from < all.size(), from -> from + SIZE)
        .mapToObj(from -> all.subList(from, Math.min(all.size(), from + SIZE)));
  }

  private <T> void writeAhead(
      Stream<List<T>> pieces, Function<? super List<T>, byte[]> making, Joined joined) {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      Queue<Future<byte[]>> underWay = new ArrayDeque<>();
      pieces.forEach(
          piece -> {
            if (underWay.size() == HELD_FOR_EACH_THREAD * threads) {
              joined.write(WAITING.on(underWay.remove()));
            }
            underWay.add(pool.submit(() -> making.apply(piece)));
          });
      underWay.forEach(last -> joined.write(WAITING.on(last)));
    } finally {
      pool.shutdownNow();
    }
  }

  /** Pieces with a separator between them. */
  private static final class Joined {
    private final OutputStream out;
    private final byte separator;
    private boolean begun;

    Joined(OutputStream out, byte separator) {
      this.out = out;
      this.separator = separator;
    }

    void write(byte[] piece) {
      try {
        if (begun) {
          out.write(separator);
        }
        out.write(piece);
        begun = true;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
