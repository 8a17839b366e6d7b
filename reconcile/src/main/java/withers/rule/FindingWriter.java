package withers.rule;

import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
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
    Looks looks = new Looks(dossier);
    Registered registered = new Registered(dossier);
    return new Finding(
        kind,
        new Anchor.Chip(dossier.animal().anchor()),
        dossier.animal().chips(),
        looks.species(),
        looks.name(actor),
        actor,
        holds.acting().map(Statement::key),
        dossier.custodian().map(Tenure::who).orElseGet(Who.Nobody::new),
        Stream.concat(dossier.live().stream(), dossier.stray().stream())
            .map(one -> registered.of(one, kind))
            .toList(),
        holds.fields(),
        certainty(holds),
        priority(kind, holds),
        new EvidenceWriter(dossier).write(kind, holds),
        holds.detail());
  }

  private Priority priority(FindingKind kind, Judgement.Holds holds) {
    Priority priority =
        Priorities.of(
            kind,
            new Looks(dossier).species(),
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
}
