package withers.rule;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.contacts.Verdict;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Source;
import withers.history.Statement;
import withers.registration.LiveRegistration;
import withers.registration.Registries;

/**
 * The animal carries two or more chips, and registrations on two of them name different people, who
 * may not both be named.
 */
final class ChipsDiverge implements Rule {

  private record Pair(LiveRegistration one, LiveRegistration other) {}

  @Override
  public FindingKind kind() {
    return FindingKind.CHIPS_DIVERGE;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    Set<NotJudged> lacking = new HashSet<>();
    for (Pair pair : divergingPairs(dossier)) {
      Set<NotJudged> lackingHere = lagging(pair, dossier);
      if (lackingHere.isEmpty()) {
        return acting(dossier).<Judgement>map(Judgement.Holds::new).orElse(Judgement.CLEAR);
      }
      lacking.addAll(lackingHere);
    }
    return lacking.isEmpty() ? Judgement.CLEAR : new Judgement.Undecided(lacking);
  }

  private static List<Pair> divergingPairs(Dossier dossier) {
    List<Pair> pairs = new ArrayList<>();
    for (LiveRegistration one : dossier.live()) {
      for (LiveRegistration other : dossier.live()) {
        if (one.chip().compareTo(other.chip()) < 0
            && isDifferent(one, other, dossier)
            && !(dossier.isAcceptable(one) && dossier.isAcceptable(other))) {
          pairs.add(new Pair(one, other));
        }
      }
    }
    return pairs;
  }

  private static boolean isDifferent(
      LiveRegistration one, LiveRegistration other, Dossier dossier) {
    return dossier.cast().verdict(one.primary(), other.primary()) == Verdict.DIFFERENT;
  }

  private static Set<NotJudged> lagging(Pair pair, Dossier dossier) {
    boolean oneFirst = pair.one.day().isBefore(pair.other.day());
    Stream<Source> sources =
        Stream.of(pair.one, pair.other)
            .map(registration -> dossier.cast().sources().get(registration.statement().source()));
    return registries(dossier)
        .lagging(
            dossier.animal(),
            sources,
            oneFirst ? pair.other.day() : pair.one.day(),
            dossier.lastChange());
  }

  private static Registries registries(Dossier dossier) {
    return acting(dossier)
        .map(dossier.cast()::organisation)
        .map(dossier.registries()::actingBy)
        .orElse(dossier.registries());
  }

  private static Optional<Statement> acting(Dossier dossier) {
    return dossier
        .custodian()
        .map(Tenure::start)
        .or(() -> dossier.animal().stating(Fact.PairedWith.class).findFirst());
  }
}
