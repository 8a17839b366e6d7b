package withers.rule;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Species;
import withers.history.History;
import withers.history.Source;
import withers.history.Statement;
import withers.id.OrganisationId;

/** What a glance takes in of a history, statement by statement. For one thread. */
final class Seen {
  private final Cast cast;
  private final SeenHandovers handovers = new SeenHandovers();
  private final SeenRegistrations registrations = new SeenRegistrations();
  private final List<Statement> visits = new ArrayList<>(4);
  private final List<OrganisationId> speaking = new ArrayList<>(2);
  private boolean unusual;
  private boolean ofRegistriesOnly = true;
  private LocalDate read = LocalDate.EPOCH;
  private LocalDate changed = LocalDate.EPOCH;
  private Species species = Species.UNSTATED;
  private @Nullable LocalDate firstBorn;
  private @Nullable LocalDate lastBorn;

  private Seen(Cast cast) {
    this.cast = cast;
  }

  /** Takes in what is said of one number, record by record as the fold leaves it. */
  static Seen of(History history, Cast cast) {
    Seen seen = new Seen(cast);
    List<Statement> statements = history.statements();
    for (int i = 0; i < statements.size() && !seen.unusual; i++) {
      seen.take(statements.get(i));
    }
    seen.registrations.endRecord();
    history.turned().ifPresent(seen::change);
    return seen;
  }

  private void take(Statement one) {
    Source source = cast.sources().get(one.source());
    Fact fact = one.fact();
    if (fact instanceof Fact.Described described) {
      describe(described);
      ofRegistriesOnly &= source.isRegistry();
    } else if (source.isRegistry()) {
      takeRegistrys(one, source.organisation());
    } else {
      takeOthers(one, fact);
    }
    if (source.isRegistry() && !speaking.contains(source.organisation())) {
      speaking.add(source.organisation());
    }
  }

  private void takeRegistrys(Statement one, OrganisationId registry) {
    if (one.fact() instanceof Fact.Registered) {
      registrations.take(one, registry);
      change(one.firstStated());
    } else {
      unusual |= !(one.fact() instanceof Fact.Linked);
    }
  }

  private void takeOthers(Statement one, Fact fact) {
    ofRegistriesOnly = false;
    if (fact instanceof Fact.Attended attended) {
      visit(one, attended.client());
    } else if (fact instanceof Fact.HandedOver handover) {
      handOver(one, handover);
    } else if (fact instanceof Fact.Implanted
        || fact instanceof Fact.Scanned && NotDetected.isRead(one)) {
      read = later(read, one.day());
    } else {
      unusual |= !(fact instanceof Fact.Linked);
    }
  }

  private void handOver(Statement one, Fact.HandedOver handover) {
    handovers.take(one, handover);
    change(one.firstStated());
    unusual |= SeenHandovers.isOpen(handover);
  }

  private void visit(Statement one, Party client) {
    if (client instanceof Party.Contact) {
      visits.add(one);
    } else {
      unusual |= !(client instanceof Party.Unstated);
    }
  }

  /** Descriptions by which two records may contradict each other are for the rules. */
  private void describe(Fact.Described described) {
    unusual |= NumberOnTwoAnimals.areOtherSpecies(species, described.species());
    if (NumberOnTwoAnimals.isTold(described.species())) {
      species = described.species();
    }
    described.born().ifPresent(this::born);
  }

  private void born(LocalDate day) {
    firstBorn = firstBorn == null || day.isBefore(firstBorn) ? day : firstBorn;
    lastBorn = lastBorn == null || day.isAfter(lastBorn) ? day : lastBorn;
    unusual |= ChronoUnit.DAYS.between(firstBorn, lastBorn) > NumberOnTwoAnimals.DAYS_APART;
  }

  private void change(LocalDate stated) {
    changed = later(changed, stated);
  }

  static LocalDate later(LocalDate one, LocalDate other) {
    return one.isAfter(other) ? one : other;
  }

  /** Whether something was said that only the rules can judge. */
  boolean isUnusual() {
    return unusual;
  }

  /** Whether nobody speaks of it but registries. */
  boolean isOfRegistriesOnly() {
    return ofRegistriesOnly;
  }

  SeenHandovers handovers() {
    return handovers;
  }

  SeenRegistrations registrations() {
    return registrations;
  }

  /** Visits with a client's contact, in no order. */
  List<Statement> visits() {
    return visits;
  }

  /** The first visit that names a client. */
  Optional<Statement> firstVisit() {
    return visits.stream().min(Statement.BY_DAY);
  }

  /** The registries that speak of it, live or not. */
  List<OrganisationId> speaking() {
    return speaking;
  }

  /** The latest day on which its chip was read for sure; long ago when it never was. */
  LocalDate read() {
    return read;
  }

  /** The last change of docs/findings.md, but for the custodian's. */
  LocalDate changed() {
    return changed;
  }
}
