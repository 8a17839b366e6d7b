package withers.contacts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import withers.codec.ByteReader;
import withers.id.OrganisationId;
import withers.matching.Ground;
import withers.matching.Level;
import withers.matching.Trait;
import withers.matching.Verdict;
import withers.matching.Weighing;

/** Reads what {@link AnswerWriter} wrote. */
final class AnswerReader {
  private static final Verdict[] VERDICTS = Verdict.values();
  private static final Ground[] GROUNDS = Ground.values();
  private static final Trait[] TRAITS = Trait.values();
  private static final Level[] LEVELS = Level.values();

  private record Priors(double prior, double household) {}

  private final ByteReader in;
  private final List<Object> read = new ArrayList<>();

  AnswerReader(byte[] bytes) {
    this.in = new ByteReader(bytes);
  }

  Optional<Known> contact() {
    long flags = in.unsigned();
    return (flags & AnswerWriter.THERE) == 0 ? Optional.empty() : Optional.of(known(flags));
  }

  private Known known(long flags) {
    Optional<OrganisationId> organisation =
        (flags & AnswerWriter.ORGANISATION) == 0
            ? Optional.empty()
            : Optional.of(once(OrganisationId.class, () -> new OrganisationId(in.text())));
    return new Known(
        organisation,
        (flags & AnswerWriter.NOBODY) != 0,
        (flags & AnswerWriter.REACHED) != 0,
        (flags & AnswerWriter.ONLY_A_NAME) != 0);
  }

  Optional<Comparison> pair() {
    long flags = in.unsigned();
    return (flags & AnswerWriter.THERE) == 0
        ? Optional.empty()
        : Optional.of(new Comparison(weighing(), (flags & AnswerWriter.ALIKE) != 0));
  }

  long number() {
    return in.unsigned();
  }

  long eight() {
    return in.eight();
  }

  Weighing weighing() {
    Verdict verdict = constant(VERDICTS);
    Ground ground = constant(GROUNDS);
    Priors priors = once(Priors.class, () -> new Priors(real(), real()));
    List<Weighing.Weighed> traits = new ArrayList<>();
    for (int left = in.length("traits"); left > 0; left--) {
      traits.add(once(Weighing.Weighed.class, this::trait));
    }
    return new Weighing(verdict, ground, priors.prior, priors.household, traits, real(), real());
  }

  private Weighing.Weighed trait() {
    return new Weighing.Weighed(constant(TRAITS), constant(LEVELS), real(), real(), real());
  }

  private double real() {
    return Double.longBitsToDouble(in.eight());
  }

  private <E> E constant(E[] constants) {
    long ordinal = in.unsigned();
    if (ordinal < 0 || ordinal >= constants.length) {
      throw in.damaged("a word that is not known");
    }
    return constants[(int) ordinal];
  }

  private <T> T once(Class<T> type, Supplier<T> reader) {
    long number = in.unsigned();
    if (number == 0) {
      T value = reader.get();
      read.add(value);
      return value;
    }
    if (number < 0 || number > read.size() || !type.isInstance(read.get((int) number - 1))) {
      throw in.damaged("a number of nothing that was read");
    }
    return type.cast(read.get((int) number - 1));
  }

  void requireEnd() {
    if (!in.atEnd()) {
      throw in.damaged("bytes left over");
    }
  }
}
