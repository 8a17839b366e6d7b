package withers.supply;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.finding.NotJudged;
import withers.history.Source;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.source.Coverage.Reach;
import withers.source.SourceKind;

/**
 * Whether an organisation's own records of animals are recent and wide enough for their silence to
 * mean something.
 */
public record OwnRecords(Sources sources) {

  private static final Set<SourceKind> OF_OTHERS =
      Set.of(SourceKind.REGISTRY_CONTACTS, SourceKind.CHIP_SUPPLY);

  /** What is lacking for them to be complete up to a day; nothing when they are. */
  public Optional<NotJudged.Reason> lacking(OrganisationId organisation, LocalDate day) {
    List<Source> own = of(organisation).toList();
    if (own.isEmpty()) {
      return Optional.of(NotJudged.Reason.NEVER_EXPORTS);
    }
    boolean complete =
        own.stream().anyMatch(s -> s.complete().filter(up -> !up.isBefore(day)).isPresent());
    return complete ? Optional.empty() : Optional.of(NotJudged.Reason.EXPORT_TOO_OLD);
  }

  /** Its sources that send the whole of its records of animals. */
  public Stream<Source> of(OrganisationId organisation) {
    return sources.all().stream().filter(source -> isOf(source, organisation));
  }

  private static boolean isOf(Source source, OrganisationId organisation) {
    return source.organisation().equals(organisation)
        && !OF_OTHERS.contains(source.description().kind())
        && source.description().coverage().reach() == Reach.WHOLE;
  }
}
