package withers.ingest.inspect;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;

/**
 * What a column of the file can be in a profile.
 *
 * @param path as the profile writes it: {@code second-chip}, {@code client.phones}, {@code key}
 * @param copy 0, or more for further columns of a list such as a second phone
 */
record Field(
    String path, Use use, Optional<ColumnName> column, Optional<PartyName> party, int copy) {

  private static final Set<PartyName> PEOPLE =
      EnumSet.of(
          PartyName.CLIENT,
          PartyName.BUYER,
          PartyName.PRIMARY,
          PartyName.SECONDARY,
          PartyName.EMERGENCY,
          PartyName.REPORTER);

  static Field key() {
    return new Field("key", Use.KEY, Optional.empty(), Optional.empty(), 0);
  }

  static Field animalId() {
    return new Field("animal-id", Use.ANIMAL_ID, Optional.empty(), Optional.empty(), 0);
  }

  static Field exportDate() {
    return new Field("export-date", Use.EXPORT_DATE, Optional.empty(), Optional.empty(), 0);
  }

  static Field of(ColumnName column) {
    Use use =
        switch (column.content()) {
          case NUMBER -> Use.CHIP;
          case DAY -> Use.DAY;
          case WORD -> Use.WORD;
          case TEXT -> column == ColumnName.ACCOUNT ? Use.ACCOUNT : Use.ANIMAL_NAME;
        };
    return new Field(column.word(), use, Optional.of(column), Optional.empty(), 0);
  }

  static Field of(PartyName party, Use use, int copy) {
    return new Field(
        party.word() + "." + use.word(), use, Optional.empty(), Optional.of(party), copy);
  }

  boolean is(ColumnName name) {
    return column.filter(name::equals).isPresent();
  }

  boolean isOf(PartyName name) {
    return party.filter(name::equals).isPresent();
  }

  /** Pets have people; numbers are sold to organisations, and shelters deal with both. */
  boolean isMostlyAPerson() {
    return party.filter(PEOPLE::contains).isPresent();
  }

  /** Whether a wrong column here could put an animal or a person in the wrong place. */
  boolean isPrecious() {
    return use == Use.CHIP || use.isContact() || use == Use.DAY;
  }
}
