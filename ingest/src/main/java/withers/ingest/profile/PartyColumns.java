package withers.ingest.profile;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The headers of the columns about one person or organisation.
 *
 * @param id the source's own id of the client: all versions of one client share it
 * @param organisation a column that names organisations only; where it is filled, it outranks the
 *     others
 */
public record PartyColumns(
    Optional<String> id,
    Optional<String> name,
    Optional<String> givenName,
    Optional<String> familyName,
    List<String> phones,
    List<String> emails,
    List<String> address,
    Optional<String> postcode,
    Optional<String> town,
    Optional<String> region,
    Optional<String> country,
    Optional<String> organisation) {

  public PartyColumns {
    phones = List.copyOf(phones);
    emails = List.copyOf(emails);
    address = List.copyOf(address);
  }

  /** Every header named here. */
  public List<String> headers() {
    Stream<String> singles =
        Stream.of(id, name, givenName, familyName, postcode, town, region, country, organisation)
            .flatMap(Optional::stream);
    return Stream.of(singles, phones.stream(), emails.stream(), address.stream())
        .flatMap(headers -> headers)
        .toList();
  }
}
