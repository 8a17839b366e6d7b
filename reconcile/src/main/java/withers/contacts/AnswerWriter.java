package withers.contacts;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import withers.codec.Bytes;
import withers.id.OrganisationId;
import withers.matching.Weighing;

/**
 * Writes what was told of contacts: a byte for each, some eight and two probabilities for two of
 * them. Organisations and what traits weigh come again and again: each is written once.
 */
final class AnswerWriter {
  static final int THERE = 1;
  static final int NOBODY = 2;
  static final int REACHED = 4;
  static final int ONLY_A_NAME = 8;
  static final int ORGANISATION = 16;
  static final int ALIKE = 2;

  private record Priors(double prior, double household) {}

  private final Bytes out = new Bytes();
  private final Map<Object, Integer> written = new HashMap<>();

  void contact(Optional<Known> contact) {
    out.unsigned(contact.map(AnswerWriter::flags).orElse(0));
    contact.flatMap(Known::organisation).ifPresent(this::organisation);
  }

  private static int flags(Known known) {
    return THERE
        | (known.isNobody() ? NOBODY : 0)
        | (known.canBeReached() ? REACHED : 0)
        | (known.isOnlyAName() ? ONLY_A_NAME : 0)
        | (known.organisation().isPresent() ? ORGANISATION : 0);
  }

  private void organisation(OrganisationId id) {
    once(id, () -> out.text(id.value()));
  }

  void pair(Optional<Comparison> pair) {
    out.unsigned(pair.map(one -> THERE | (one.alike() ? ALIKE : 0)).orElse(0));
    pair.map(Comparison::weighing).ifPresent(this::weighing);
  }

  void number(long number) {
    out.unsigned(number);
  }

  /** A weighing under the key of its pair. */
  void weighing(long high, long low, Weighing weighing) {
    out.eight(high);
    out.eight(low);
    weighing(weighing);
  }

  private void weighing(Weighing weighing) {
    out.unsigned(weighing.verdict().ordinal());
    out.unsigned(weighing.ground().ordinal());
    once(
        new Priors(weighing.prior(), weighing.householdPrior()),
        () -> {
          real(weighing.prior());
          real(weighing.householdPrior());
        });
    out.unsigned(weighing.traits().size());
    weighing.traits().forEach(trait -> once(trait, () -> trait(trait)));
    real(weighing.samePerson());
    real(weighing.sameHousehold());
  }

  private void trait(Weighing.Weighed trait) {
    out.unsigned(trait.trait().ordinal());
    out.unsigned(trait.level().ordinal());
    real(trait.weight());
    real(trait.household());
    real(trait.rarity());
  }

  private void real(double value) {
    out.eight(Double.doubleToLongBits(value));
  }

  /** 0 and the value when it is new, else its number from 1. */
  private void once(Object value, Runnable write) {
    Integer number = written.putIfAbsent(value, written.size() + 1);
    out.unsigned(number == null ? 0 : number);
    if (number == null) {
      write.run();
    }
  }

  byte[] bytes() {
    return out.toArray();
  }
}
