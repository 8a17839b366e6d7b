package withers.trace;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import withers.finding.Who;
import withers.history.Statement;
import withers.registration.LiveRegistration;
import withers.rule.Dossier;
import withers.rule.Keeper;
import withers.rule.Standing;
import withers.trace.Trace.Call;
import withers.trace.Trace.Supply;

/**
 * Whom to call about an animal: the organisation most likely to reach its people. The order is our
 * judgement.
 */
record NextCall(Dossier dossier, List<Supply> supplied) {

  Optional<Call> find() {
    return custodian()
        .or(this::keeperNotRegistered)
        .or(this::registry)
        .or(this::keeper)
        .or(this::lastRecord)
        .or(this::purchaser);
  }

  private Optional<Call> custodian() {
    return dossier
        .custodian()
        .filter(tenure -> tenure.who() instanceof Who.Organisation)
        .map(
            tenure ->
                new Call(
                    ((Who.Organisation) tenure.who()).id(),
                    "by the records it has had the animal since " + tenure.since()));
  }

  /** A registry that names somebody from before, or a stranger, is asked after the keeper's. */
  private Optional<Call> keeperNotRegistered() {
    return dossier
        .keeper()
        .filter(keeper -> dossier.standings(keeper).stream().noneMatch(Standing::isAcceptable))
        .map(this::keepersRecord);
  }

  private Optional<Call> keeper() {
    return dossier.keeper().map(this::keepersRecord);
  }

  private Call keepersRecord(Keeper keeper) {
    Statement start = keeper.start();
    return new Call(
        dossier.cast().organisation(start),
        "its record %s names the person who has had the animal since %s"
            .formatted(start.key(), keeper.since()));
  }

  private Optional<Call> registry() {
    return dossier.live().stream()
        .max(Comparator.comparing(LiveRegistration::day))
        .map(NextCall::registered);
  }

  private static Call registered(LiveRegistration registration) {
    LocalDate day = registration.day();
    return new Call(registration.registry(), "it holds a live registration of " + day);
  }

  private Optional<Call> lastRecord() {
    List<Statement> all = dossier.animal().statements();
    return all.stream()
        .reduce((one, next) -> next)
        .map(
            last ->
                new Call(
                    dossier.cast().organisation(last),
                    "its record %s of %s is the latest".formatted(last.key(), last.day())));
  }

  private Optional<Call> purchaser() {
    return supplied.stream()
        .filter(supply -> supply.purchaser() instanceof Who.Organisation)
        .reduce((one, next) -> next)
        .map(
            supply ->
                new Call(
                    ((Who.Organisation) supply.purchaser()).id(),
                    "it bought the number on " + supply.day() + " and may know whom it went to"));
  }
}
