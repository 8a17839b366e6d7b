package withers.damage;

import java.util.ArrayList;
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
 * All numbers that records speak of without guessing: those of each partition and source in order,
 * so that those which begin with some digits are found by two searches in each. A number that ends
 * in zeros is none of them: it may be cut itself. Not safe for several threads.
 */
public final class KnownNumbers {

  /** The numbers of one partition, by the source that alone speaks of them. */
  public static final class Part {
    private final Map<SourceId, LongStream.Builder> onlyFrom = new HashMap<>();
    private LongStream.Builder fromSeveral = LongStream.builder();

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

  /** Each in order: the numbers of some partition of which one source alone speaks, or several. */
  private record Sorted(Optional<SourceId> onlyFrom, Numbers numbers) {}

  private final List<Sorted> all = new ArrayList<>();
  private final Map<Asked, Alike> answers = new HashMap<>();

  /**
   * Puts the parts together.
   *
   * @param parts each is used up
   */
  public KnownNumbers(Collection<Part> parts) {
    for (Part part : parts) {
      part.onlyFrom.forEach((source, some) -> add(Optional.of(source), some));
      part.onlyFrom.clear(); // numbers are many: they are not held twice
      add(Optional.empty(), part.fromSeveral);
      part.fromSeveral = LongStream.builder();
    }
  }

  private void add(Optional<SourceId> onlyFrom, LongStream.Builder numbers) {
    all.add(new Sorted(onlyFrom, Numbers.of(numbers.build())));
  }

  /** The numbers of other sources that may have been cut to these digits. */
  public Alike to(LostDigits digits, SourceId but) {
    return answers.computeIfAbsent(new Asked(digits, but), this::look);
  }

  private Alike look(Asked asked) {
    List<Numbers> others =
        all.stream()
            .filter(some -> !some.onlyFrom.equals(Optional.of(asked.but)))
            .map(Sorted::numbers)
            .toList();
    Numbers.Range range = Numbers.Range.of(asked.digits);
    int count = others.stream().mapToInt(numbers -> numbers.count(range)).sum();
    List<ChipNumber> first =
        others.stream()
            .flatMapToLong(numbers -> numbers.first(range, Damage.SHOWN))
            .sorted()
            .limit(Damage.SHOWN)
            .mapToObj(ChipNumber::ofPacked)
            .toList();
    return new Alike(first, count);
  }
}
