package withers.ingest.translate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import withers.contact.Contact;
import withers.ingest.profile.PartyColumns;
import withers.ingest.rows.Row;

/** Where one person or organisation stands in a row. */
final class PartyCells {

  private final Cell id;
  private final Cell organisation;
  private final Cell name;
  private final Cell givenName;
  private final Cell familyName;
  private final List<Cell> phones;
  private final List<Cell> emails;
  private final List<Cell> address;
  private final Cell postcode;
  private final Cell town;
  private final Cell region;
  private final Cell country;

  PartyCells(PartyColumns columns, Function<String, Cell> find) {
    this.id = cell(columns.id(), find);
    this.organisation = cell(columns.organisation(), find);
    this.name = cell(columns.name(), find);
    this.givenName = cell(columns.givenName(), find);
    this.familyName = cell(columns.familyName(), find);
    this.phones = columns.phones().stream().map(find).toList();
    this.emails = columns.emails().stream().map(find).toList();
    this.address = columns.address().stream().map(find).toList();
    this.postcode = cell(columns.postcode(), find);
    this.town = cell(columns.town(), find);
    this.region = cell(columns.region(), find);
    this.country = cell(columns.country(), find);
  }

  private static Cell cell(Optional<String> header, Function<String, Cell> find) {
    return header.map(find).orElse(Cell::nothing);
  }

  /** The organisation's name, or empty. */
  String organisation(Row row) {
    return organisation.in(row);
  }

  Optional<String> clientId(Row row) {
    return Optional.of(id.in(row)).filter(text -> !text.isEmpty());
  }

  Contact contact(Row row) {
    return new Contact(
        name.in(row),
        givenName.in(row),
        familyName.in(row),
        texts(phones, row),
        texts(emails, row),
        texts(address, row),
        postcode.in(row),
        town.in(row),
        region.in(row),
        country.in(row));
  }

  private static List<String> texts(List<Cell> cells, Row row) {
    List<String> texts = new ArrayList<>(cells.size());
    for (Cell cell : cells) {
      texts.add(cell.in(row));
    }
    return texts;
  }
}
