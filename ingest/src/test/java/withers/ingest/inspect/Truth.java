package withers.ingest.inspect;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import withers.ingest.profile.PartyColumns;
import withers.ingest.profile.SourceProfile;

/** What a profile says of a file's columns: for each path, the headers, in small letters. */
final class Truth {

  private Truth() {}

  static Map<String, Set<String>> of(SourceProfile profile) {
    Map<String, Set<String>> truth = new LinkedHashMap<>();
    profile.key().forEach(header -> put(truth, "key", header));
    profile.animalId().ifPresent(header -> put(truth, "animal-id", header));
    profile.columns().headers().forEach((name, header) -> put(truth, name.word(), header));
    profile.columns().parties().forEach((name, party) -> party(truth, name.word() + ".", party));
    return truth;
  }

  private static void party(Map<String, Set<String>> truth, String party, PartyColumns columns) {
    put(truth, party + "id", columns.id());
    put(truth, party + "name", columns.name());
    put(truth, party + "given-name", columns.givenName());
    put(truth, party + "family-name", columns.familyName());
    put(truth, party + "phones", columns.phones());
    put(truth, party + "emails", columns.emails());
    put(truth, party + "address", columns.address());
    put(truth, party + "postcode", columns.postcode());
    put(truth, party + "town", columns.town());
    put(truth, party + "organisation", columns.organisation());
  }

  private static void put(Map<String, Set<String>> truth, String path, Optional<String> header) {
    header.ifPresent(one -> put(truth, path, one));
  }

  private static void put(Map<String, Set<String>> truth, String path, List<String> headers) {
    headers.forEach(one -> put(truth, path, one));
  }

  private static void put(Map<String, Set<String>> truth, String path, String header) {
    truth.computeIfAbsent(path, p -> new TreeSet<>()).add(header.toLowerCase(Locale.ROOT));
  }
}
