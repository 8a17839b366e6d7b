package withers.supply;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.finding.Evidence;
import withers.finding.Who;
import withers.history.Folded;
import withers.history.Stated;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * A range of numbers that was supplied, by a statement in effect.
 *
 * @param purchaser to whom; nobody when the record names none
 * @param prepaid whether a registration of each number was paid for with it
 * @param listed whether its record is still on the source's list
 */
public record Supply(
    NumberRange range, Who purchaser, boolean prepaid, Stated stated, boolean listed) {

  /** By day, source and key: a record states one supply. */
  static final Comparator<Supply> ORDER =
      Comparator.comparing(Supply::day).thenComparing(Supply::source).thenComparing(Supply::key);

  static Supply of(Folded.Kept kept, Who purchaser) {
    Fact.Supplied fact = (Fact.Supplied) kept.stated().fact();
    return new Supply(fact.range(), purchaser, fact.prepaid(), kept.stated(), kept.listed());
  }

  /** The day that it states, or else the one on which its source first said so. */
  public LocalDate day() {
    return stated.event().day();
  }

  /** The export date that said so first. */
  public LocalDate firstStated() {
    return stated.exportDate();
  }

  /** The day, if the record states one. */
  Optional<LocalDate> statedDay() {
    return stated.event().date();
  }

  public SourceId source() {
    return stated.source();
  }

  public RecordKey key() {
    return stated.key();
  }

  /** The purchaser, if that is an organisation of the directory. */
  public Optional<OrganisationId> organisation() {
    return purchaser instanceof Who.Organisation member
        ? Optional.of(member.id())
        : Optional.empty();
  }

  /** That one of its numbers was supplied. */
  public Evidence evidence(ChipNumber number, Cast cast) {
    return new Evidence(
        Evidence.Part.SUPPLIED,
        day(),
        number,
        cast.organisation(stated),
        source(),
        key(),
        stated.slot(),
        firstStated(),
        purchaser,
        stated.where());
  }

  /** How many numbers it names. */
  long size() {
    return range.last().packed() - range.first().packed() + 1;
  }
}
