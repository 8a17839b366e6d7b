package withers.ingest.profile;

import static withers.ingest.profile.ColumnName.ACCOUNT;
import static withers.ingest.profile.ColumnName.BORN;
import static withers.ingest.profile.ColumnName.CHIP;
import static withers.ingest.profile.ColumnName.DECEASED;
import static withers.ingest.profile.ColumnName.DIED;
import static withers.ingest.profile.ColumnName.ENDED;
import static withers.ingest.profile.ColumnName.END_REASON;
import static withers.ingest.profile.ColumnName.FIRST;
import static withers.ingest.profile.ColumnName.IMPLANTED;
import static withers.ingest.profile.ColumnName.INTAKE;
import static withers.ingest.profile.ColumnName.INTAKE_TYPE;
import static withers.ingest.profile.ColumnName.LAST;
import static withers.ingest.profile.ColumnName.MOVED;
import static withers.ingest.profile.ColumnName.MOVEMENT_TYPE;
import static withers.ingest.profile.ColumnName.NAME;
import static withers.ingest.profile.ColumnName.OUTCOME;
import static withers.ingest.profile.ColumnName.OUTCOME_TYPE;
import static withers.ingest.profile.ColumnName.PREPAID;
import static withers.ingest.profile.ColumnName.REGISTERED;
import static withers.ingest.profile.ColumnName.REPORTED;
import static withers.ingest.profile.ColumnName.REPORT_TYPE;
import static withers.ingest.profile.ColumnName.RETURNED;
import static withers.ingest.profile.ColumnName.REUNITED;
import static withers.ingest.profile.ColumnName.SCANNED;
import static withers.ingest.profile.ColumnName.SCAN_RESULT;
import static withers.ingest.profile.ColumnName.SECOND_CHIP;
import static withers.ingest.profile.ColumnName.SEX;
import static withers.ingest.profile.ColumnName.SOLD;
import static withers.ingest.profile.ColumnName.SPECIES;
import static withers.ingest.profile.ColumnName.STATUS;
import static withers.ingest.profile.ColumnName.SUPPLIED;
import static withers.ingest.profile.ColumnName.UPDATED;
import static withers.ingest.profile.ColumnName.VISIT;

import java.util.List;
import java.util.stream.Stream;
import withers.source.SourceKind;

/**
 * The columns that a kind of source can have, and those that it must have.
 *
 * @param needed columns that must be in the file or fixed
 * @param groups of columns of which the file must have at least one whole
 */
public record KindColumns(
    List<ColumnName> needed,
    List<ColumnName> optional,
    List<PartyName> neededParties,
    List<PartyName> optionalParties,
    List<List<ColumnName>> groups) {

  private static final List<ColumnName> ANIMAL = List.of(NAME, SPECIES, SEX, BORN);

  private static final KindColumns CLINIC =
      new KindColumns(
          List.of(CHIP, VISIT),
          with(ANIMAL, SECOND_CHIP, IMPLANTED, SCANNED, SCAN_RESULT, DIED, DECEASED),
          List.of(PartyName.CLIENT),
          List.of(PartyName.IMPLANTER),
          List.of());

  private static final KindColumns SHELTER =
      new KindColumns(
          List.of(CHIP),
          with(
              ANIMAL,
              SECOND_CHIP,
              INTAKE,
              INTAKE_TYPE,
              OUTCOME,
              OUTCOME_TYPE,
              MOVED,
              MOVEMENT_TYPE,
              DIED),
          List.of(),
          List.of(PartyName.INTAKE_FROM, PartyName.OUTCOME_TO, PartyName.MOVEMENT_WITH),
          List.of(
              List.of(INTAKE, INTAKE_TYPE),
              List.of(OUTCOME, OUTCOME_TYPE),
              List.of(MOVED, MOVEMENT_TYPE)));

  private static final KindColumns SELLER =
      new KindColumns(
          List.of(CHIP, SOLD),
          with(ANIMAL, SECOND_CHIP, RETURNED, DIED),
          List.of(PartyName.BUYER),
          List.of(),
          List.of());

  private static final KindColumns SUPPLY =
      new KindColumns(
          List.of(),
          List.of(CHIP, FIRST, LAST, SUPPLIED, PREPAID),
          List.of(PartyName.PURCHASER),
          List.of(),
          List.of(List.of(FIRST, LAST), List.of(CHIP)));

  private static final KindColumns REGISTRY =
      new KindColumns(
          List.of(CHIP),
          with(ANIMAL, ACCOUNT, REGISTERED, UPDATED, STATUS, ENDED, END_REASON, DIED),
          List.of(PartyName.PRIMARY),
          List.of(PartyName.SECONDARY, PartyName.EMERGENCY, PartyName.ORGANISATION),
          List.of());

  private static final KindColumns LOST_AND_FOUND =
      new KindColumns(
          List.of(CHIP, REPORT_TYPE, REPORTED),
          with(ANIMAL, REUNITED),
          List.of(),
          List.of(PartyName.REPORTER, PartyName.HOLDER),
          List.of());

  /** What a kind of source can have and must have. */
  public static KindColumns of(SourceKind kind) {
    return switch (kind) {
      case CLINIC_PATIENTS -> CLINIC;
      case SHELTER_MOVEMENTS -> SHELTER;
      case SELLER_SALES -> SELLER;
      case CHIP_SUPPLY -> SUPPLY;
      case REGISTRY_CONTACTS -> REGISTRY;
      case LOST_AND_FOUND -> LOST_AND_FOUND;
    };
  }

  /** All columns, needed ones first. */
  public List<ColumnName> columns() {
    return Stream.concat(needed.stream(), optional.stream()).toList();
  }

  /** All people and organisations, needed ones first. */
  public List<PartyName> parties() {
    return Stream.concat(neededParties.stream(), optionalParties.stream()).toList();
  }

  private static List<ColumnName> with(List<ColumnName> first, ColumnName... more) {
    return Stream.concat(first.stream(), Stream.of(more)).toList();
  }
}
