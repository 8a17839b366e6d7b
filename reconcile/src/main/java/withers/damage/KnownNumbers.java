package withers.damage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.finding.Damage;
import withers.history.History;
import withers.id.SourceId;

/**
 * All numbers that records speak of without guessing, in order, so that those which begin with some
 * digits are found by two searches. A number that ends in zeros is none of them: it may be cut
 * itself. Not safe for several threads.
 */
public final class KnownNumbers {

  /** The numbers of one partition, by the source that alone speaks of them. */
  public static final class Part {
    private final Map<SourceId, LongStream.Builder> onlyFrom = new HashMap<>();
    private final LongStream.Builder fromSeveral = LongStream.builder();

    /** Adds a number of which something is in effect. */
    public void add(History history) {
      if (isKept(history.chip())) {
        add(history.chip(), history.onlySource());
      }
    }

    /** Adds a number that {@link #isKept}, as it was handed over. */
    public void add(ChipNumber number, Optional<SourceId> onlyFromThis) {
      onlyFromThis
          .map(source -> onlyFrom.computeIfAbsent(source, s -> LongStream.builder()))
          .orElse(fromSeveral)
          .add(number.packed());
    }

    /** Hands all over, each with the source that alone speaks of it; the part is used up. */
    public void forEach(BiConsumer<ChipNumber, Optional<SourceId>> taker) {
      onlyFrom.forEach((source, numbers) -> hand(numbers, Optional.of(source), taker));
      hand(fromSeveral, Optional.empty(), taker);
    }

    private static void hand(
        LongStream.Builder numbers,
        Optional<SourceId> source,
        BiConsumer<ChipNumber, Optional<SourceId>> taker) {
      numbers.build().forEach(number -> taker.accept(ChipNumber.ofPacked(number), source));
    }
  }

  /** Whether a number is one of them when something is said of it. */
  public static boolean isKept(ChipNumber number) {
    return LostDigits.isDecimal(number) && !LostDigits.endsInZeros(number);
  }

  private record Asked(LostDigits digits, SourceId but) {}

  private final long[] all;
  private final Map<SourceId, long[]> onlyFrom = new HashMap<>();
  private final Map<Asked, Alike> answers = new HashMap<>();

  /**
   * Puts the parts together.
   *
   * @param parts each is used up
   */
  public KnownNumbers(Collection<Part> parts) {
    Map<SourceId, LongStream> bySource = new HashMap<>();
    for (Part part : parts) {
      part.onlyFrom.forEach((id, some) -> bySource.merge(id, some.build(), LongStream::concat));
    }
    bySource.forEach((source, numbers) -> onlyFrom.put(source, numbers.sorted().toArray()));
    LongStream several = parts.stream().flatMapToLong(part -> part.fromSeveral.build());
    LongStream single = onlyFrom.values().stream().flatMapToLong(Arrays::stream);
    this.all = LongStream.concat(several, single).sorted().toArray();
  }

  /** The numbers of other sources that may have been cut to these digits. */
  public Alike to(LostDigits digits, SourceId but) {
    return answers.computeIfAbsent(new Asked(digits, but), this::look);
  }

  private Alike look(Asked asked) {
    long[] own = onlyFrom.getOrDefault(asked.but, new long[0]);
    int count = count(all, asked.digits) - count(own, asked.digits);
    return new Alike(first(asked.digits, own, Math.min(count, Damage.SHOWN)), count);
  }

  private List<ChipNumber> first(LostDigits digits, long[] own, int wanted) {
    List<ChipNumber> first = new ArrayList<>(wanted);
    for (int i = from(all, digits); first.size() < wanted; i++) {
      if (Arrays.binarySearch(own, all[i]) < 0) {
        first.add(ChipNumber.ofPacked(all[i]));
      }
    }
    return first;
  }

  private static int count(long[] numbers, LostDigits digits) {
    ChipNumber most = digits.most();
    return insertion(numbers, most.packed() + (digits.admits(most) ? 1 : 0))
        - from(numbers, digits);
  }

  private static int from(long[] numbers, LostDigits digits) {
    ChipNumber least = digits.least();
    return insertion(numbers, least.packed() + (digits.admits(least) ? 0 : 1));
  }

  /** How many numbers are less; none is there twice. */
  private static int insertion(long[] numbers, long packed) {
    int found = Arrays.binarySearch(numbers, packed);
    return found < 0 ? -found - 1 : found;
  }
}
