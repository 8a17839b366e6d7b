package withers.report.privacy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import withers.audit.AuditEvent;
import withers.audit.Confidential;
import withers.audit.Disclosed;
import withers.auditing.AuditBook;
import withers.cases.CaseEvent;
import withers.cases.Reference;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.codec.Streams;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.LogSnapshot;
import withers.mailing.Mailings;
import withers.workspace.WorkspacePaths;

/** Puts together all that is held on a person. */
public record HeldReader(LogSnapshot log, Optional<RunResult> run, WorkspacePaths paths) {

  /**
   * Reads it.
   *
   * @param files files that hold the person's details
   */
  public Held read(Request request, List<Path> files) {
    Set<ContactRef> references = request.references();
    Map<SourceId, OrganisationId> organisations = organisations();
    return new Held(
        request.matches().stream().map(HeldReader::contact).toList(),
        request.mentions().stream().map(one -> said(one, organisations)).toList(),
        run.stream().flatMap(known -> followUps(known, references)).toList(),
        settled(references),
        AuditBook.read(log).stream()
            .filter(event -> event.references().stream().anyMatch(references::contains))
            .map(HeldReader::audit)
            .toList(),
        files.stream().map(paths::shown).toList());
  }

  private Map<SourceId, OrganisationId> organisations() {
    Map<SourceId, OrganisationId> organisations =
        new TreeMap<>((one, other) -> one.value().compareTo(other.value()));
    log.markers().stream()
        .flatMap(marker -> marker.source().stream())
        .forEach(source -> organisations.put(source.id(), source.organisation()));
    return organisations;
  }

  private static Held.Contact contact(Match match) {
    Contact contact = match.contact();
    Stream<String> place =
        Stream.of(contact.postcode(), contact.town(), contact.region(), contact.country());
    return new Held.Contact(
        match.reference().toString(),
        match.why(),
        contact.fullName(),
        contact.phones(),
        contact.emails(),
        Stream.concat(contact.addressLines().stream(), place)
            .filter(part -> !part.isEmpty())
            .toList());
  }

  private static Held.Said said(Mention mention, Map<SourceId, OrganisationId> organisations) {
    SourceId source = mention.record().source();
    return new Held.Said(
        mention.reference().toString(),
        source.value(),
        Optional.ofNullable(organisations.get(source)).map(OrganisationId::value).orElse(""),
        mention.record().key().value(),
        mention.about(),
        mention.role(),
        mention.exportDate());
  }

  private Stream<Held.FollowUp> followUps(RunResult known, Set<ContactRef> references) {
    Mailings mailings = Mailings.read(log);
    return known.findings().stream()
        .filter(finding -> people(finding).anyMatch(references::contains))
        .map(
            finding -> {
              String reference = Reference.of(finding.caseKey()).toString();
              return new Held.FollowUp(
                  reference,
                  finding.caseKey().rule(),
                  finding.actor().value(),
                  mailings.daysOf(finding.actor(), reference));
            });
  }

  private static Stream<ContactRef> people(Finding finding) {
    Stream<Who> named =
        Stream.of(
                Stream.of(finding.custodian()),
                finding.registered().stream().map(Finding.Registration::primary),
                finding.evidence().stream().map(Evidence::who))
            .flatMap(all -> all);
    return named.flatMap(who -> who.person().stream()).map(Who.Person::reference);
  }

  private List<Held.Settled> settled(Set<ContactRef> references) {
    List<Held.Settled> found = new ArrayList<>();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        (event, marker) -> {
          if (event instanceof Settled settled
              && people(settled.says()).anyMatch(references::contains)) {
            found.add(
                new Held.Settled(
                    settled.day(),
                    settled.by(),
                    Reference.of(settled.key()).toString(),
                    settled.reason()));
          }
        });
    return found;
  }

  private static Stream<ContactRef> people(Settlement says) {
    if (says instanceof Settlement.OfPeople people) {
      return Stream.of(people.one().reference(), people.other().reference());
    }
    return says instanceof Settlement.RightAsItIs right
        ? Stream.concat(
                Stream.of(right.custodian()),
                right.registered().stream().map(Settlement.Registration::primary))
            .filter(Party.Contact.class::isInstance)
            .map(party -> ((Party.Contact) party).reference())
        : Stream.of();
  }

  private static Held.Audit audit(AuditEvent event) {
    String what =
        event instanceof Disclosed disclosed
            ? "shown by " + disclosed.command()
            : event instanceof Confidential mark
                ? mark.lifted() ? "no longer confidential" : "marked as confidential"
                : "forgotten";
    return new Held.Audit(event.on(), event.by(), what, event.reason());
  }
}
