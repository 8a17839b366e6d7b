package withers.ingest.profile;

import java.util.List;
import java.util.stream.Stream;
import withers.yaml.Fields;

/** Reads the columns about one person or organisation. */
final class PartyReader {

  private PartyReader() {}

  static PartyColumns read(Fields fields) {
    PartyColumns party =
        new PartyColumns(
            fields.optionalText("id"),
            fields.optionalText("name"),
            fields.optionalText("given-name"),
            fields.optionalText("family-name"),
            fields.texts("phones"),
            fields.texts("emails"),
            fields.texts("address"),
            fields.optionalText("postcode"),
            fields.optionalText("town"),
            fields.optionalText("region"),
            fields.optionalText("country"),
            fields.optionalText("organisation"));
    requireSomeone(party);
    return party;
  }

  private static void requireSomeone(PartyColumns party) {
    Stream<List<String>> lists = Stream.of(party.phones(), party.emails(), party.address());
    boolean named =
        Stream.of(party.name(), party.givenName(), party.familyName(), party.organisation())
            .anyMatch(header -> header.isPresent());
    if (!named && lists.allMatch(List::isEmpty)) {
      throw new IllegalArgumentException(
          "Expected a column that says who it is or how to reach them (name, organisation, phones,"
              + " emails, address), but found none");
    }
  }
}
