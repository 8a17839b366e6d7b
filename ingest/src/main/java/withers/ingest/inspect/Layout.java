package withers.ingest.inspect;

import static withers.ingest.profile.ColumnName.INTAKE;
import static withers.ingest.profile.ColumnName.INTAKE_TYPE;
import static withers.ingest.profile.ColumnName.MOVED;
import static withers.ingest.profile.ColumnName.MOVEMENT_TYPE;
import static withers.ingest.profile.ColumnName.OUTCOME;
import static withers.ingest.profile.ColumnName.OUTCOME_TYPE;
import static withers.ingest.profile.PartyName.INTAKE_FROM;
import static withers.ingest.profile.PartyName.MOVEMENT_WITH;
import static withers.ingest.profile.PartyName.OUTCOME_TO;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.KindColumns;
import withers.ingest.profile.PartyName;
import withers.source.SourceKind;

/** A way in which a kind of records is laid out in columns. */
enum Layout {
  PATIENTS(SourceKind.CLINIC_PATIENTS, "patients of a clinic, a row for each"),
  STAYS(SourceKind.SHELTER_MOVEMENTS, "stays in a shelter, a row for each"),
  MOVEMENTS(SourceKind.SHELTER_MOVEMENTS, "movements of a shelter, a row for each"),
  SALES(SourceKind.SELLER_SALES, "animals that a seller sold"),
  BOXES(SourceKind.CHIP_SUPPLY, "supplied ranges of numbers"),
  CHIPS(SourceKind.CHIP_SUPPLY, "supplied numbers, a row for each"),
  REGISTRATIONS(SourceKind.REGISTRY_CONTACTS, "registrations of a registry"),
  REPORTS(SourceKind.LOST_AND_FOUND, "reports of lost and found animals");

  private static final List<Use> PARTY_USES =
      List.of(
          Use.PARTY_ID,
          Use.FULL_NAME,
          Use.GIVEN_NAME,
          Use.FAMILY_NAME,
          Use.PHONE,
          Use.EMAIL,
          Use.ADDRESS,
          Use.POSTCODE,
          Use.TOWN,
          Use.REGION,
          Use.COUNTRY,
          Use.ORGANISATION);
  private static final Set<Use> LISTS = Set.of(Use.PHONE, Use.EMAIL, Use.ADDRESS);

  private final SourceKind kind;
  private final String words;

  Layout(SourceKind kind, String words) {
    this.kind = kind;
    this.words = words;
  }

  SourceKind kind() {
    return kind;
  }

  /** What it is, for people. */
  String words() {
    return words;
  }

  /** Columns without which it is not this. */
  Set<ColumnName> needed() {
    return switch (this) {
      case PATIENTS -> Set.of(ColumnName.CHIP, ColumnName.VISIT);
      case STAYS -> Set.of(ColumnName.CHIP, INTAKE, INTAKE_TYPE);
      case MOVEMENTS -> Set.of(ColumnName.CHIP, MOVED, MOVEMENT_TYPE);
      case SALES -> Set.of(ColumnName.CHIP, ColumnName.SOLD);
      case BOXES -> Set.of(ColumnName.FIRST, ColumnName.LAST);
      case CHIPS, REGISTRATIONS -> Set.of(ColumnName.CHIP);
      case REPORTS -> Set.of(ColumnName.CHIP, ColumnName.REPORT_TYPE, ColumnName.REPORTED);
    };
  }

  /** People and organisations without whom it is not this. */
  List<PartyName> neededParties() {
    return KindColumns.of(kind).neededParties();
  }

  private boolean has(ColumnName column) {
    Set<ColumnName> stays = Set.of(INTAKE, INTAKE_TYPE, OUTCOME, OUTCOME_TYPE);
    Set<ColumnName> movements = Set.of(MOVED, MOVEMENT_TYPE);
    Set<ColumnName> boxes = Set.of(ColumnName.FIRST, ColumnName.LAST);
    return switch (this) {
      case STAYS -> !movements.contains(column);
      case MOVEMENTS -> !stays.contains(column);
      case BOXES -> column != ColumnName.CHIP;
      case CHIPS -> !boxes.contains(column);
      case PATIENTS, SALES, REGISTRATIONS, REPORTS -> true;
    };
  }

  private boolean has(PartyName party) {
    return switch (this) {
      case STAYS -> party != MOVEMENT_WITH;
      case MOVEMENTS -> party != INTAKE_FROM && party != OUTCOME_TO;
      case PATIENTS, SALES, BOXES, CHIPS, REGISTRATIONS, REPORTS -> true;
    };
  }

  /** Everything that a column can be here. */
  List<Field> fields() {
    List<Field> fields = new ArrayList<>();
    fields.add(Field.key());
    fields.add(Field.exportDate());
    if (kind != SourceKind.CHIP_SUPPLY) {
      fields.add(Field.animalId());
    }
    KindColumns columns = KindColumns.of(kind);
    columns.columns().stream().filter(this::has).map(Field::of).forEach(fields::add);
    columns.parties().stream().filter(this::has).forEach(party -> add(party, fields));
    return List.copyOf(fields);
  }

  private static void add(PartyName party, List<Field> fields) {
    for (Use use : PARTY_USES) {
      fields.add(Field.of(party, use, 0));
      if (LISTS.contains(use)) {
        fields.add(Field.of(party, use, 1));
      }
    }
  }
}
