package withers.clear;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.id.SourceId;

/**
 * The clear animals of one partition, by their numbers. Their bytes are what is kept: some two for
 * each number, since only the way from one to the next is written. Immutable.
 */
public final class ClearPart {

  static final ClearPart NONE = new Gathering().part();

  private final long statements;
  private final byte[] bytes;

  private ClearPart(long statements, byte[] bytes) {
    this.statements = statements;
    this.bytes = bytes;
  }

  /** Takes what a part is made of. */
  @FunctionalInterface
  interface Taker {

    /**
     * Takes numbers of which one source alone speaks, or of which several do.
     *
     * @param onlyFrom that source; empty for several
     * @param numbers as {@link ChipNumber#packed}, ascending
     */
    void take(Optional<SourceId> onlyFrom, long[] numbers);
  }

  /** Gathers a part, in any order; each number once. For one thread. */
  public static final class Gathering {
    private final Map<Optional<SourceId>, LongStream.Builder> numbers = new HashMap<>();
    private long statements;

    /**
     * Adds a clear animal.
     *
     * @param onlyFrom the source that alone speaks of it; empty for several
     * @param about how many statements are in effect about it
     */
    public void add(ChipNumber number, Optional<SourceId> onlyFrom, int about) {
      add(number, onlyFrom);
      statements += about;
    }

    private void add(ChipNumber number, Optional<SourceId> onlyFrom) {
      numbers.computeIfAbsent(onlyFrom, source -> LongStream.builder()).add(number.packed());
    }

    /** Adds those that still are. */
    public void add(StillClear still) {
      still.forEach(this::add);
      statements += still.statements();
    }

    /** All that was added; the gathering is used up. */
    public ClearPart part() {
      Bytes out = new Bytes();
      out.unsigned(numbers.size());
      numbers.entrySet().stream()
          .sorted(Comparator.comparing(one -> text(one.getKey())))
          .forEach(one -> write(one.getKey(), one.getValue().build().sorted().toArray(), out));
      return new ClearPart(statements, out.toArray());
    }

    private static void write(Optional<SourceId> source, long[] sorted, Bytes out) {
      out.text(text(source));
      out.unsigned(sorted.length);
      long before = 0;
      for (long number : sorted) {
        out.signed(number - before);
        before = number;
      }
    }
  }

  private static String text(Optional<SourceId> source) {
    return source.map(SourceId::value).orElse("");
  }

  /** About how many statements are in effect about them all. */
  long statements() {
    return statements;
  }

  void write(Bytes out) {
    out.unsigned(statements);
    out.all(bytes);
  }

  static ClearPart read(ByteReader in) {
    return new ClearPart(in.unsigned(), in.all("a partition"));
  }

  /** Hands over what was gathered. */
  void forEach(Taker taker) {
    ByteReader in = new ByteReader(bytes);
    for (int left = in.length("groups"); left > 0; left--) {
      String source = in.text();
      taker.take(
          source.isEmpty() ? Optional.empty() : Optional.of(new SourceId(source)), numbers(in));
    }
  }

  private static long[] numbers(ByteReader in) {
    long[] numbers = new long[in.length("numbers")];
    long before = 0;
    for (int i = 0; i < numbers.length; i++) {
      before += in.signed();
      numbers[i] = before;
    }
    return numbers;
  }
}
