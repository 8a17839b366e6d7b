package withers.rule;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.fact.Species;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.Finding.Registration;
import withers.finding.FindingKind;
import withers.finding.Priority;
import withers.finding.Who;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.organisation.Period;
import withers.priority.Priorities;

/** Writes a finding up: what staff need to recognise the animal and to act. */
record FindingWriter(Dossier dossier) {

  Finding write(FindingKind kind, Judgement.Holds holds) {
    OrganisationId actor = holds.actor().organisation(dossier.cast());
    return new Finding(
        kind,
        new Anchor.Chip(dossier.animal().anchor()),
        dossier.animal().chips(),
        species(),
        name(actor),
        actor,
        holds.acting().map(Statement::key),
        dossier.custodian().map(Tenure::who).orElseGet(Who.Nobody::new),
        Stream.concat(dossier.live().stream(), dossier.stray().stream())
            .map(r -> new Registration(r.chip(), r.registry(), r.primary()))
            .toList(),
        holds.fields(),
        certainty(holds),
        priority(kind, holds),
        new EvidenceWriter(dossier).write(kind, holds),
        Optional.empty());
  }

  private Priority priority(FindingKind kind, Judgement.Holds holds) {
    Priority priority =
        Priorities.of(
            kind,
            species(),
            dossier.custodian().map(Tenure::since),
            holds.fields(),
            dossier.asOf());
    boolean holdRuns =
        kind == FindingKind.FOUND_WAITING && holds.acting().filter(this::isHeld).isPresent();
    return holdRuns ? Priorities.whileHeld(priority) : priority;
  }

  /** Whether a stray's owner is still waited for. */
  private boolean isHeld(Statement intake) {
    int days =
        dossier.registries().periods().days(Period.STRAY_HOLD, dossier.cast().organisation(intake));
    return intake.fact() instanceof Fact.HandedOver
        && !intake.day().plusDays(days).isBefore(dossier.asOf());
  }

  private Certainty certainty(Judgement.Holds holds) {
    boolean byVisits =
        dossier.custodian().filter(t -> t.start().fact() instanceof Fact.Attended).isPresent();
    boolean byPlacement = holds.acting().filter(Statement::isPlaced).isPresent();
    return byVisits || byPlacement ? Certainty.INFERRED : Certainty.STATED;
  }

  private Species species() {
    return latest(described -> described.species() != Species.UNSTATED, statement -> true)
        .map(Fact.Described::species)
        .orElse(Species.UNSTATED);
  }

  private Optional<String> name(OrganisationId actor) {
    Predicate<Fact.Described> named = described -> described.name().isPresent();
    return latest(named, statement -> dossier.cast().organisation(statement).equals(actor))
        .or(() -> latest(named, statement -> true))
        .flatMap(Fact.Described::name);
  }

  /** The description that was first stated last. */
  private Optional<Fact.Described> latest(
      Predicate<Fact.Described> wanted, Predicate<Statement> from) {
    Stream<Statement> described =
        dossier
            .animal()
            .stating(Fact.Described.class)
            .filter(from)
            .filter(s -> wanted.test(fact(s)));
    return described.max(LAST_STATED).map(FindingWriter::fact);
  }

  private static Fact.Described fact(Statement statement) {
    return (Fact.Described) statement.fact();
  }

  private static final Comparator<Statement> LAST_STATED =
      Comparator.comparing(Statement::firstStated).thenComparing(Statement.BY_DAY);
}
