package withers.report.privacy;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.id.OrganisationId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.source.SourceDescription;

/**
 * What was found of a person who asks.
 *
 * @param wanted what the person gave
 * @param matches contacts that may be this person, the likeliest first
 * @param mentions statements that name any of these
 */
public record Request(Contact wanted, List<Match> matches, List<Mention> mentions) {
  public Request {
    matches = List.copyOf(matches);
    mentions = List.copyOf(mentions);
  }

  /** The same, for those that are this person. */
  public Request of(Set<ContactRef> chosen) {
    return new Request(
        wanted,
        matches.stream().filter(match -> chosen.contains(match.reference())).toList(),
        mentions.stream().filter(mention -> chosen.contains(mention.reference())).toList());
  }

  /** The same, for those that are judged to be this person: never a namesake by default. */
  public Request likely() {
    return of(
        matches.stream().filter(Match::isSame).map(Match::reference).collect(Collectors.toSet()));
  }

  public Set<ContactRef> references() {
    return matches.stream().map(Match::reference).collect(Collectors.toSet());
  }

  /** Records that name one of them. */
  public List<RecordName> records() {
    return mentions.stream().map(Mention::record).distinct().toList();
  }

  /** What gives the person away: what was given, and what the contacts say. */
  public Traces traces() {
    return Traces.of(
        Stream.concat(Stream.of(wanted), matches.stream().map(Match::contact)).toList());
  }

  /** The organisations whose own sources name one of them: nobody else was shown details. */
  public Set<OrganisationId> tellers(LogSnapshot log) {
    return tellers(log.markers());
  }

  private Set<OrganisationId> tellers(Collection<ImportMarker> markers) {
    Set<String> sources =
        records().stream().map(record -> record.source().value()).collect(Collectors.toSet());
    return markers.stream()
        .flatMap(marker -> marker.source().stream())
        .filter(source -> sources.contains(source.id().value()))
        .map(SourceDescription::organisation)
        .collect(Collectors.toSet());
  }
}
