package withers.scorecard;

import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.finding.NotJudged;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * A living patient that the group saw lately. It holds nothing of people.
 *
 * @param clinic of the group, under whose record it is told of: its own one, if that is of the
 *     group; else the one that saw it last
 * @param anchor the animal's lowest number; empty when no animal took the record
 * @param numbered whether a record of the group has a number that can be read
 * @param visiting whether another clinic of the group saw it too
 * @param implanted whether a clinic of the group put a chip in
 * @param lacking what a registry lacks when that is why it can't be told
 */
public record Patient(
    OrganisationId clinic,
    SourceId source,
    RecordKey key,
    Optional<ChipNumber> anchor,
    boolean numbered,
    Told scanned,
    boolean visiting,
    Told implanted,
    Reach reach,
    Set<NotJudged> lacking) {

  /** By source and key, then number. */
  static final Comparator<Patient> ORDER =
      Comparator.comparing(Patient::source)
          .thenComparing(Patient::key)
          .thenComparing(patient -> patient.anchor.map(ChipNumber::display).orElse(""));

  public Patient {
    lacking = Set.copyOf(lacking);
  }
}
