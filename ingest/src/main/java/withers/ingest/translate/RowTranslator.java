package withers.ingest.translate;

import java.util.Optional;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Typed;
import withers.source.InputRefusedException;

/** Translates the rows of one file. Not safe for several threads. */
public final class RowTranslator {

  private static final int LONGEST_KEY = 200;

  private final SourceProfile profile;
  private final Layout layout;
  private final Surroundings around;
  private final String keyColumns;

  /**
   * A translator for files with this header.
   *
   * @throws InputRefusedException when the header lacks a column that the profile names
   */
  public RowTranslator(SourceProfile profile, Header header, Surroundings around) {
    this.profile = profile;
    this.layout = new Layout(profile, header);
    this.around = around;
    this.keyColumns = String.join(", ", profile.key());
  }

  /** What a row states, or why it can't be taken. */
  public Translation translate(Row row) {
    if (row.size() != layout.width()) {
      return ragged(row);
    }
    String key = Keys.read(layout.key(), row);
    if (key.isEmpty()) {
      return rejected(
          Reject.Code.NO_KEY, keyColumns, "Expected a key that names the record, but found none");
    }
    if (key.length() > LONGEST_KEY) {
      return rejected(
          Reject.Code.KEY_TOO_LONG,
          keyColumns,
          "Expected a key of at most %d characters, but found %d"
              .formatted(LONGEST_KEY, key.length()));
    }
    RecordKey named = new RecordKey(key);
    Optional<String> unreadable = layout.unreadable(row);
    if (unreadable.isPresent()) {
      return unreadable(row, unreadable.get(), named);
    }
    RowInHand inHand = new RowInHand(profile, layout, around, row, named);
    translate(inHand);
    return inHand.result();
  }

  private Translation unreadable(Row row, String column, RecordKey key) {
    Optional<RecordKey> named =
        profile.key().stream().anyMatch(name -> layout.typed(name, row).isUnreadable())
            ? Optional.empty()
            : Optional.of(key);
    Typed typed = layout.typed(column, row);
    return new Translation.Rejected(
        named, new Reject(code(typed.kind()), column, expected(typed.kind()) + typed.found()));
  }

  private static Reject.Code code(Typed.Kind kind) {
    return switch (kind) {
      case REFERENCE_UNKNOWN -> Reject.Code.REFERENCE_UNKNOWN;
      case REFERENCE_AMBIGUOUS -> Reject.Code.REFERENCE_AMBIGUOUS;
      case TEXT, DAY, FRACTION, UNREADABLE -> Reject.Code.CELL_UNREADABLE;
    };
  }

  private static String expected(Typed.Kind kind) {
    return switch (kind) {
      case REFERENCE_UNKNOWN, REFERENCE_AMBIGUOUS -> "Expected one row of the key, but found ";
      case TEXT, DAY, FRACTION, UNREADABLE -> "Expected a cell that can be read, but found ";
    };
  }

  /** A stray delimiter shifts what comes after it; a key before it can still be read. */
  private Translation ragged(Row row) {
    String message = "Expected %d cells, but found %d".formatted(layout.width(), row.size());
    Optional<RecordKey> key =
        Optional.of(row)
            .filter(layout::hasKey)
            .map(cells -> Keys.read(layout.key(), cells))
            .filter(text -> !text.isEmpty() && text.length() <= LONGEST_KEY)
            .map(RecordKey::new);
    return new Translation.Rejected(
        key, new Reject(Reject.Code.WRONG_NUMBER_OF_CELLS, "", message));
  }

  private static Translation rejected(Reject.Code code, String column, String message) {
    return new Translation.Rejected(Optional.empty(), new Reject(code, column, message));
  }

  private void translate(RowInHand row) {
    switch (profile.kind()) {
      case CHIP_SUPPLY -> ChipSupply.translate(row);
      case CLINIC_PATIENTS -> animal(row, ClinicPatients::translate);
      case SHELTER_MOVEMENTS -> animal(row, ShelterMovements::translate);
      case SELLER_SALES -> animal(row, SellerSales::translate);
      case REGISTRY_CONTACTS -> animal(row, RegistryContacts::translate);
      case LOST_AND_FOUND -> animal(row, LostAndFound::translate);
    }
  }

  @FunctionalInterface
  private interface AboutAnAnimal {
    void translate(RowInHand row, Subject animal);
  }

  private static void animal(RowInHand row, AboutAnAnimal kind) {
    Animals.subject(row)
        .ifPresent(
            animal -> {
              Animals.state(row, animal);
              kind.translate(row, animal);
            });
  }
}
