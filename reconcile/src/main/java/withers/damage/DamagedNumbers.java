package withers.damage;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BinaryOperator;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.fact.Fact;
import withers.fact.Species;
import withers.finding.Damage;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.history.Sources;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.priority.Priorities;

/**
 * The rule {@code number-damaged}: a finding for each record with a damaged number, for the
 * organisation of its source.
 *
 * @param known what other records speak of
 * @param isDead whether the animal that carries a number died
 */
public record DamagedNumbers(Sources sources, KnownNumbers known, Predicate<ChipNumber> isDead) {

  private record Identity(SourceId source, RecordKey key) implements Comparable<Identity> {
    @Override
    public int compareTo(Identity other) {
      int bySource = source.compareTo(other.source);
      return bySource != 0 ? bySource : key.compareTo(other.key);
    }
  }

  /** The findings, one for each record, in order of source and key. */
  public List<Finding> judge(Collection<DamagedRecord> records) {
    Set<Identity> ofDead =
        records.stream()
            .filter(this::isOfDead)
            .map(DamagedNumbers::identity)
            .collect(Collectors.toSet());
    Map<Identity, DamagedRecord> byKey = new TreeMap<>();
    BinaryOperator<DamagedRecord> telling = BinaryOperator.minBy(DamagedRecord.MOST_TELLING);
    for (DamagedRecord record : records) {
      if (!ofDead.contains(identity(record))) {
        byKey.merge(identity(record), record, telling);
      }
    }
    return byKey.values().stream().map(this::finding).toList();
  }

  private static Identity identity(DamagedRecord record) {
    return new Identity(record.source(), record.key());
  }

  /** A row's two numbers are one animal's: a death under either speaks for both. */
  private boolean isOfDead(DamagedRecord record) {
    return record.isOfDead()
        || Stream.concat(record.place().stream(), record.pairedWith()).anyMatch(isDead);
  }

  private Finding finding(DamagedRecord record) {
    Optional<Fact.Described> described = record.described();
    Species species = described.map(Fact.Described::species).orElse(Species.UNSTATED);
    return new Finding(
        FindingKind.NUMBER_DAMAGED,
        new Anchor.Source(record.source()),
        record.place().stream().toList(),
        species,
        described.flatMap(Fact.Described::name),
        sources.get(record.source()).organisation(),
        Optional.of(record.key()),
        new Who.Nobody(),
        List.of(),
        List.of(),
        record.place().isPresent() ? Certainty.INFERRED : Certainty.STATED,
        Priorities.ofDamagedNumber(species, record.place().isPresent()),
        List.of(),
        Optional.of(damage(record)));
  }

  private Damage damage(DamagedRecord record) {
    Alike alike =
        record
            .lost()
            .map(digits -> known.to(digits, record.source()))
            .orElseGet(() -> Alike.of(record.readings()));
    return new Damage(
        record.source(),
        record.written(),
        record.lost().map(LostDigits::surviving),
        alike.first(),
        alike.count(),
        record.first().exportDate(),
        record.first().where());
  }
}
