package withers.rule;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.custody.Tenure;
import withers.finding.FindingKind;
import withers.history.Statement;
import withers.registration.LiveRegistration;

/** Two registries name different people for one number. */
final class RegistriesDisagree implements Rule {

  private static final Comparator<LiveRegistration> EARLIEST =
      Comparator.comparing(LiveRegistration::day)
          .thenComparing(LiveRegistration::statement, Statement.bySlot());

  @Override
  public FindingKind kind() {
    return FindingKind.REGISTRIES_DISAGREE;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return Disputes.judge(
        dossier, RegistriesDisagree::isOfTwoRegistries, pairs -> acting(pairs, dossier));
  }

  private static boolean isOfTwoRegistries(LiveRegistration one, LiveRegistration other) {
    return one.chip().equals(other.chip()) && one.registry().compareTo(other.registry()) < 0;
  }

  private static Optional<Statement> acting(List<Disputes.Pair> pairs, Dossier dossier) {
    return dossier
        .custodian()
        .map(Tenure::start)
        .or(
            () ->
                pairs.stream()
                    .flatMap(pair -> Stream.of(pair.one(), pair.other()))
                    .min(EARLIEST)
                    .map(LiveRegistration::statement));
  }
}
