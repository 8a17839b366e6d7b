package withers.rule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.custody.Handover;
import withers.custody.Tenure;
import withers.custody.Visit;
import withers.fact.Basis;
import withers.fact.Fact;
import withers.finding.Evidence;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.history.Statement;
import withers.registration.LiveRegistration;

/** Gathers the statements that a finding rests on. */
record EvidenceWriter(Dossier dossier) {

  private static final Comparator<Evidence> ORDER =
      Comparator.comparing(Evidence::day)
          .thenComparing(Evidence::part)
          .thenComparing(Evidence::source)
          .thenComparing(Evidence::key)
          .thenComparing(Evidence::slot)
          .thenComparing(Evidence::chip)
          .thenComparing(Evidence::firstStated);

  /** In order of day. */
  List<Evidence> write(FindingKind kind, Judgement.Holds holds) {
    List<Evidence> evidence = new ArrayList<>();
    implant().ifPresent(evidence::add);
    dossier.custody().trail().handovers().forEach(handover -> add(handover, evidence));
    dossier.custody().tenures().forEach(tenure -> add(tenure, evidence));
    dossier.live().forEach(registration -> evidence.add(registered(registration)));
    stating(Fact.PairedWith.class).map(s -> of(Part.PAIRED, s, nobody())).forEach(evidence::add);
    ofKind(kind, holds).forEach(evidence::add);
    ofSupply(kind).forEach(evidence::add);
    dossier.stray().map(this::registered).ifPresent(evidence::add);
    return evidence.stream().distinct().sorted(ORDER).toList();
  }

  /** What only this kind rests on. */
  private Stream<Evidence> ofKind(FindingKind kind, Judgement.Holds holds) {
    return switch (kind) {
      case FOUND_WAITING -> holds.acting().flatMap(this::report).stream();
      case LOST_UNREACHABLE -> Stream.concat(holds.acting().map(this::lost).stream(), lookUps());
      case NUMBER_ON_TWO_ANIMALS ->
          NumberOnTwoAnimals.contradicting(dossier).stream()
              .map(s -> of(Part.DESCRIBED, s, nobody()));
      case CUSTODY_UNCLEAR -> Stream.concat(deaths(), signsOfLife());
      case UNREGISTERED -> lookUps();
      case NOT_DETECTED -> scans();
      case SCAN_OVERDUE -> Stream.concat(holds.acting().map(this::seen).stream(), scans());
      case REGISTERED_AFTER_DEATH -> deaths();
      default -> Stream.empty();
    };
  }

  private Evidence lost(Statement report) {
    return of(Part.LOST, report, who(report, ((Fact.Lost) report.fact()).reporter()));
  }

  private Stream<Evidence> lookUps() {
    return stating(Fact.LookedUp.class).map(this::lookedUp);
  }

  private Stream<Evidence> deaths() {
    return stating(Fact.Died.class).map(death -> of(Part.DIED, death, nobody()));
  }

  /** Visits only: handovers and implants are told already. */
  private Stream<Evidence> signsOfLife() {
    return dossier.deaths().signsOfLife().stream()
        .filter(sign -> sign.fact() instanceof Fact.Attended)
        .map(this::seen);
  }

  private Evidence seen(Statement visit) {
    return of(Part.SEEN_WITH, visit, client(visit));
  }

  private Stream<Evidence> scans() {
    return stating(Fact.Scanned.class)
        .map(s -> of(NotDetected.isRead(s) ? Part.SCANNED : Part.NOT_DETECTED, s, nobody()));
  }

  /** What supplies have to do with it, and how the chip is known to be in an animal. */
  private Stream<Evidence> ofSupply(FindingKind kind) {
    return switch (kind) {
      case PREPAID_UNUSED -> dossier.prepaid();
      case TRAIL_ENDS_AT_PURCHASER ->
          Stream.concat(dossier.supplied(), stating(Fact.Found.class).map(this::found));
      default -> Stream.empty();
    };
  }

  private Optional<Evidence> implant() {
    return stating(Fact.Implanted.class)
        .findFirst()
        .map(s -> of(Part.IMPLANTED, s, who(s, ((Fact.Implanted) s.fact()).implanter())));
  }

  private void add(Handover handover, List<Evidence> evidence) {
    if (handover.basis() == Basis.INTAKE_STRAY) {
      evidence.add(of(Part.TAKEN_IN, handover.statement(), handover.receiver()));
      return;
    }
    if (Cast.isNamed(handover.giver())) {
      evidence.add(of(Part.CAME_FROM, handover.statement(), handover.giver()));
    }
    Part part = handover.basis().temporary() ? Part.HELD_BY : Part.WENT_TO;
    evidence.add(of(part, handover.statement(), handover.receiver()));
  }

  /** Custodians by visits; those by handovers are on the trail already. */
  private void add(Tenure tenure, List<Evidence> evidence) {
    if (tenure.start().fact() instanceof Fact.Attended) {
      evidence.add(of(Part.SEEN_WITH, tenure.start(), tenure.who()));
      tenure
          .confirmedBy()
          .map(second -> of(Part.SEEN_WITH, second, client(second)))
          .ifPresent(evidence::add);
    }
  }

  private Who client(Statement visit) {
    return dossier.custody().visits().stream()
        .filter(one -> one.statement().equals(visit))
        .map(Visit::client)
        .findFirst()
        .orElseGet(EvidenceWriter::nobody);
  }

  private Evidence registered(LiveRegistration registration) {
    return of(
        Part.REGISTERED_TO, registration.day(), registration.statement(), registration.primary());
  }

  /** A stray's intake is on the trail already. */
  private Optional<Evidence> report(Statement report) {
    return Optional.of(report).filter(one -> one.fact() instanceof Fact.Found).map(this::found);
  }

  private Evidence found(Statement report) {
    return of(Part.FOUND, report, who(report, ((Fact.Found) report.fact()).holder()));
  }

  private Evidence lookedUp(Statement statement) {
    String registry = ((Fact.LookedUp) statement.fact()).registry();
    return of(Part.LOOKED_UP, statement, dossier.cast().people().named(registry));
  }

  private Stream<Statement> stating(Class<? extends Fact> shape) {
    return dossier.animal().stating(shape);
  }

  private Who who(Statement statement, withers.fact.Party party) {
    return dossier.cast().who(statement, party);
  }

  private static Who nobody() {
    return new Who.Nobody();
  }

  private Evidence of(Part part, Statement statement, Who who) {
    return of(part, statement.day(), statement, who);
  }

  private Evidence of(Part part, java.time.LocalDate day, Statement statement, Who who) {
    return new Evidence(
        part,
        day,
        statement.chip(),
        dossier.cast().organisation(statement),
        statement.source(),
        statement.key(),
        statement.slot(),
        statement.firstStated(),
        who,
        statement.where());
  }
}
