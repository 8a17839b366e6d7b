package withers.report.list;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.contact.ContactVault;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.mailing.Mailings;
import withers.organisation.Directory;
import withers.report.text.Texts;

/** Makes the lists of a run. */
public final class FollowUpLists {

  private final RunResult run;
  private final Directory directory;
  private final ContactVault vault;
  private final Texts texts;
  private final Mailings mailings;
  private final Set<CaseKey> opened;
  private final Set<CaseKey> waiting;
  private final Set<CaseKey> aside;
  private final Map<CaseKey, Life> lives = new HashMap<>();

  private FollowUpLists(
      RunResult run, Directory directory, ContactVault vault, Texts texts, Mailings mailings) {
    this.run = run;
    this.mailings = mailings;
    this.directory = directory;
    this.vault = vault;
    this.texts = texts;
    this.opened = new HashSet<>(run.opened());
    this.waiting =
        run.backlogs().stream()
            .flatMap(backlog -> backlog.waiting().stream())
            .collect(Collectors.toSet());
    this.aside = new HashSet<>(run.aside());
    run.lives().forEach(life -> lives.put(life.key(), life));
  }

  /** The lists of organisations that were never sent one by mail, all at once. */
  public static List<FollowUpList> of(
      RunResult run, Directory directory, ContactVault vault, Texts texts) {
    return of(run, directory, vault, texts, Mailings.NONE);
  }

  /**
   * The lists of all organisations that have something to follow up, or had, all at once: in the
   * order of their ids.
   *
   * @param mailings what was sent: a list tells what changed since its reader's last one
   */
  public static List<FollowUpList> of(
      RunResult run, Directory directory, ContactVault vault, Texts texts, Mailings mailings) {
    return new FollowUpLists(run, directory, vault, texts, mailings).all().toList();
  }

  /**
   * The same, each made when it is asked for: so that no more than one need be held at a time,
   * however many there are.
   */
  public static Iterable<FollowUpList> oneByOne(
      RunResult run, Directory directory, ContactVault vault, Texts texts, Mailings mailings) {
    return () -> new FollowUpLists(run, directory, vault, texts, mailings).all().iterator();
  }

  private Stream<FollowUpList> all() {
    return Share.of(run).entrySet().stream()
        .filter(one -> hasReader(one.getValue()))
        .map(one -> list(one.getKey(), one.getValue()));
  }

  private boolean hasReader(Share share) {
    return Stream.of(share.opened(), share.stillOpen(), share.closed())
        .flatMap(List::stream)
        .anyMatch(key -> !aside.contains(key));
  }

  private FollowUpList list(OrganisationId id, Share share) {
    Reader reader = new Reader(id, directory, vault, texts);
    List<Finding> all = share.findings().stream().toList(); // made once
    List<Finding> own = all.stream().filter(finding -> isShown(finding.caseKey())).toList();
    reader.expect(Stream.concat(people(own), share.questions().stream().map(OpenQuestion::keeper)));
    Known known = Known.of(mailings.lastBefore(run.id(), run.asOf(), id), opened, share);
    SoFar soFar = new SoFar(texts, lives, mailings.timesTold(run.id(), run.asOf(), id));
    Sections sections = new Sections(texts, reader, known::isNew, soFar);
    return new FollowUpList(
        reader.self(),
        run.id(),
        run.asOf(),
        sections.of(own),
        questions(share, new Questions(texts, reader, new Phrases(texts))),
        known.since(),
        known.settled(count(share.closed())),
        count(share.settled()),
        count(notFound(share.stillOpen(), all)),
        beginning(id),
        resting(all, sections),
        known.with(own));
  }

  private static List<CaseKey> notFound(List<CaseKey> open, List<Finding> findings) {
    Set<CaseKey> found = findings.stream().map(Finding::caseKey).collect(Collectors.toSet());
    return open.stream().filter(key -> !found.contains(key)).toList();
  }

  private static Stream<Who> people(List<Finding> findings) {
    return findings.stream()
        .flatMap(
            finding ->
                Stream.of(
                        Stream.of(finding.custodian()),
                        finding.registered().stream().map(Finding.Registration::primary),
                        finding.evidence().stream().map(Evidence::who))
                    .flatMap(some -> some));
  }

  private static List<Question> questions(Share share, Questions asker) {
    return share.questions().stream().map(asker::ask).toList();
  }

  private Optional<FollowUpList.Beginning> beginning(OrganisationId id) {
    return run.backlogs().stream()
        .filter(backlog -> backlog.organisation().equals(id))
        .map(
            backlog ->
                new FollowUpList.Beginning(
                    backlog.since(), backlog.followUps().size(), backlog.waiting().size()))
        .findFirst();
  }

  private List<Resting> resting(List<Finding> findings, Sections sections) {
    return findings.stream()
        .filter(finding -> rests(finding.caseKey()) && !aside.contains(finding.caseKey()))
        .flatMap(
            finding ->
                Optional.ofNullable(lives.get(finding.caseKey()))
                    .map(life -> sections.resting(finding, life))
                    .stream())
        .toList();
  }

  private boolean rests(CaseKey key) {
    return Optional.ofNullable(lives.get(key)).filter(Life::rests).isPresent();
  }

  private boolean isShown(CaseKey key) {
    return !waiting.contains(key) && !aside.contains(key) && !rests(key);
  }

  private int count(Collection<CaseKey> keys) {
    return (int) keys.stream().filter(key -> !aside.contains(key)).count();
  }
}
