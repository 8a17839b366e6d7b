package withers.slip;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;

/** Numbers, each under the signs of the people whom records name with it: two longs a sign. */
final class Signed {

  private LongStream.Builder added = LongStream.builder();
  private long[] signsAndNumbers = {};
  private Set<Long> leftOut = Set.of();

  void leaveOut(Set<ChipNumber> some) {
    leftOut = some.stream().map(ChipNumber::packed).collect(Collectors.toUnmodifiableSet());
  }

  void add(ChipNumber number, LongStream people) {
    people.distinct().forEach(sign -> added.add(sign).add(number.packed()));
  }

  /** Hands all of them over, in order of adding. Nothing can be added after that. */
  void forEach(SignTaker taker) {
    long[] all = all();
    for (int i = 0; i < all.length; i += 2) {
      if (!leftOut.contains(all[i + 1])) {
        taker.take(all[i], all[i + 1]);
      }
    }
  }

  private long[] all() {
    if (signsAndNumbers.length == 0) {
      signsAndNumbers = added.build().toArray();
      added = LongStream.builder();
    }
    return signsAndNumbers;
  }
}
