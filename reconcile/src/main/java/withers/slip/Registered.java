package withers.slip;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/** Numbers, each with the people registered under it: four longs a person, and no objects. */
final class Registered {
  private static final int LONGS = 4;

  private LongStream.Builder added = LongStream.builder();
  private long[] numbersAndPeople = {};
  private Set<Long> leftOut = Set.of();

  void leaveOut(Set<ChipNumber> some) {
    leftOut = some.stream().map(ChipNumber::packed).collect(Collectors.toUnmodifiableSet());
  }

  void add(ChipNumber number, ContactRef person) {
    added.add(number.packed()).add(person.keyId()).add(person.high()).add(person.low());
  }

  /** Hands all of them over, in order of adding. Nothing can be added after that. */
  void forEach(PersonTaker taker) {
    long[] all = all();
    for (int i = 0; i < all.length; i += LONGS) {
      if (!leftOut.contains(all[i])) {
        taker.take(all[i], new ContactRef((int) all[i + 1], all[i + 2], all[i + 3]));
      }
    }
  }

  private long[] all() {
    if (numbersAndPeople.length == 0) {
      numbersAndPeople = added.build().toArray();
      added = LongStream.builder();
    }
    return numbersAndPeople;
  }
}
