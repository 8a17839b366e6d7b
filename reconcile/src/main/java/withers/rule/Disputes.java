package withers.rule;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.finding.NotJudged;
import withers.history.Source;
import withers.history.Statement;
import withers.matching.Verdict;
import withers.registration.LiveRegistration;
import withers.registration.Registries;

/** Live registrations of one animal whose primaries are different, and may not both be named. */
final class Disputes {

  record Pair(LiveRegistration one, LiveRegistration other) {}

  private Disputes() {}

  /**
   * Whether some pair of registrations is of different people, by exports that are new enough.
   *
   * @param ofInterest which pairs are looked at, told of one and the other
   * @param acting who acts about such pairs
   */
  static Judgement judge(
      Dossier dossier,
      BiPredicate<LiveRegistration, LiveRegistration> ofInterest,
      Function<List<Pair>, Optional<Statement>> acting) {
    Set<NotJudged> lacking = new HashSet<>();
    List<Pair> told = new ArrayList<>();
    for (Pair pair : pairs(dossier, ofInterest)) {
      Set<NotJudged> lackingHere = lagging(pair, dossier, acting.apply(List.of(pair)));
      lacking.addAll(lackingHere);
      if (lackingHere.isEmpty()) {
        told.add(pair);
      }
    }
    if (told.isEmpty()) {
      return lacking.isEmpty() ? Judgement.CLEAR : new Judgement.Undecided(lacking);
    }
    return acting.apply(told).<Judgement>map(Judgement.Holds::new).orElse(Judgement.CLEAR);
  }

  private static List<Pair> pairs(
      Dossier dossier, BiPredicate<LiveRegistration, LiveRegistration> ofInterest) {
    List<Pair> pairs = new ArrayList<>();
    for (LiveRegistration one : dossier.live()) {
      for (LiveRegistration other : dossier.live()) {
        if (ofInterest.test(one, other) && isDisputed(one, other, dossier)) {
          pairs.add(new Pair(one, other));
        }
      }
    }
    return pairs;
  }

  private static boolean isDisputed(LiveRegistration one, LiveRegistration other, Dossier dossier) {
    return dossier.cast().verdict(one.primary(), other.primary()) == Verdict.DIFFERENT
        && !(dossier.isAcceptable(one) && dossier.isAcceptable(other));
  }

  private static Set<NotJudged> lagging(Pair pair, Dossier dossier, Optional<Statement> acting) {
    boolean oneFirst = pair.one.day().isBefore(pair.other.day());
    Stream<Source> sources =
        Stream.of(pair.one, pair.other)
            .map(registration -> dossier.cast().sources().get(registration.statement().source()));
    return registries(dossier, acting)
        .lagging(
            dossier.animal(),
            sources,
            oneFirst ? pair.other.day() : pair.one.day(),
            dossier.lastChange());
  }

  private static Registries registries(Dossier dossier, Optional<Statement> acting) {
    return acting
        .map(dossier.cast()::organisation)
        .map(dossier.registries()::actingBy)
        .orElse(dossier.registries());
  }
}
