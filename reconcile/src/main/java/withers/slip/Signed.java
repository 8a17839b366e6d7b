package withers.slip;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;

/** Numbers, each under the signs of the people whom records name with it: two longs a sign. */
final class Signed {

  private final LongStream.Builder signs = LongStream.builder();
  private final LongStream.Builder numbers = LongStream.builder();

  private Set<Long> leftOut = Set.of();

  void leaveOut(Set<ChipNumber> some) {
    leftOut = some.stream().map(ChipNumber::packed).collect(Collectors.toUnmodifiableSet());
  }

  void add(ChipNumber number, LongStream people) {
    people
        .distinct()
        .forEach(
            sign -> {
              signs.add(sign);
              numbers.add(number.packed());
            });
  }

  /** Hands all of them over, in order of adding; only once. */
  void forEach(SignTaker taker) {
    var number = numbers.build().iterator();
    signs.build().forEach(sign -> take(sign, number.nextLong(), taker));
  }

  private void take(long sign, long number, SignTaker taker) {
    if (!leftOut.contains(number)) {
      taker.take(sign, number);
    }
  }
}
