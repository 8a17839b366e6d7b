package withers.ingest.profile;

import java.util.Map;
import java.util.Optional;

/**
 * Which of the file's columns holds what.
 *
 * @param headers the header of each column that the file has
 * @param fixed our word for a column that the file does not have, the same in every row
 */
public record ColumnMap(
    Map<ColumnName, String> headers,
    Map<ColumnName, String> fixed,
    Map<PartyName, PartyColumns> parties) {

  public ColumnMap {
    headers = Map.copyOf(headers);
    fixed = Map.copyOf(fixed);
    parties = Map.copyOf(parties);
  }

  /** Whether the column is in the file or fixed. */
  public boolean has(ColumnName name) {
    return headers.containsKey(name) || fixed.containsKey(name);
  }

  public Optional<PartyColumns> party(PartyName name) {
    return Optional.ofNullable(parties.get(name));
  }
}
