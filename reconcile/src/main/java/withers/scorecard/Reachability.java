package withers.scorecard;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.finding.NotJudged;
import withers.finding.Who;
import withers.history.Stated;
import withers.matching.Verdict;
import withers.registration.Covering;
import withers.registration.LiveRegistration;
import withers.rule.Dossier;
import withers.rule.Keeper;

/** Judges whether the keeper of a patient with a number can be reached by it. */
record Reachability(Group group, Dossier dossier, ClinicRecords records) {

  /**
   * What is told.
   *
   * @param lacking what a registry lacks when it can't be told
   */
  record Answer(Reach reach, Set<NotJudged> lacking) {
    Answer(Reach reach) {
      this(reach, Set.of());
    }
  }

  Answer answer(Home home) {
    Told own = home.isIn(group);
    if (own != Told.YES) {
      return new Answer(own == Told.NO ? Reach.REFERRAL : Reach.HOME_NOT_KNOWN);
    }
    if (dossier.isOfTwoAnimals()) {
      return new Answer(Reach.TWO_ANIMALS);
    }
    return dossier.keeper().map(this::ofKeeper).orElseGet(() -> new Answer(withoutKeeper()));
  }

  private Reach withoutKeeper() {
    if (dossier.custody().isInDoubt()) {
      return Reach.KEEPER_NOT_KNOWN;
    }
    Who who = dossier.custodian().map(Tenure::who).orElseGet(Who.Nobody::new);
    if (Cast.isOrganisation(who)) {
      return Reach.IN_CARE;
    }
    return who.person().isPresent() ? Reach.FORGOTTEN : Reach.KEEPER_NOT_KNOWN;
  }

  private Answer ofKeeper(Keeper keeper) {
    LocalDate from = keeper.versions().newestFreshness();
    LocalDate since = from.isAfter(keeper.since()) ? from : keeper.since();
    Set<NotJudged> lagging = dossier.lagging(since);
    if (!lagging.isEmpty()) {
      return new Answer(Reach.REGISTRY_NOT_KNOWN, lagging);
    }
    return dossier.live().isEmpty() ? unregistered(since) : new Answer(registered(keeper));
  }

  private Answer unregistered(LocalDate since) {
    Covering covering = dossier.registries().covering(dossier.animal(), since);
    return covering.isFull()
        ? new Answer(Reach.NOT_REGISTERED)
        : new Answer(Reach.REGISTRY_NOT_KNOWN, covering.lacking());
  }

  private Reach registered(Keeper keeper) {
    WaysToCall ways = new WaysToCall(dossier.cast().people());
    List<Who> registered = dossier.live().stream().map(LiveRegistration::primary).toList();
    List<Who> confirmed = confirmed(keeper).toList();
    if (registered.stream().anyMatch(one -> confirmed.stream().anyMatch(c -> ways.agree(one, c)))) {
      return Reach.REACHABLE;
    }
    if (Stream.concat(registered.stream(), confirmed.stream()).anyMatch(ways::isForgotten)) {
      return Reach.FORGOTTEN;
    }
    if (registered.stream().noneMatch(ways::canCall)) {
      return Reach.NO_DETAILS;
    }
    return confirmed.isEmpty() ? Reach.NOT_CONFIRMED : Reach.OTHER_DETAILS;
  }

  /** Clients who may be the keeper, as clinics' records name them now, if that was confirmed. */
  private Stream<Who> confirmed(Keeper keeper) {
    return records.clients().stream()
        .filter(this::isConfirmed)
        .map(stated -> dossier.cast().who(stated, ((Fact.Attended) stated.fact()).client()))
        .filter(client -> client.person().isPresent())
        .filter(client -> keeper.versions().verdict(client) != Verdict.DIFFERENT);
  }

  private boolean isConfirmed(Stated stated) {
    LocalDate said = stated.exportDate();
    LocalDate day = stated.event().day();
    return group.isConfirmed(group.clinic(stated.source()), day.isAfter(said) ? day : said);
  }
}
