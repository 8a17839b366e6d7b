package withers.ingest.sniff;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How many cells records have.
 *
 * @param counts how many records there are of each width; blank ones left out
 */
public record Widths(Map<Integer, Long> counts) {

  public Widths {
    counts = Map.copyOf(counts);
  }

  public static Widths of(List<SampleRecord> records) {
    return new Widths(
        records.stream()
            .filter(record -> !record.isBlank())
            .collect(
                Collectors.groupingBy(SampleRecord::width, TreeMap::new, Collectors.counting())));
  }

  /** The width that most records have, the larger one of several; 0 when there is no record. */
  public int commonest() {
    return counts.entrySet().stream()
        .max(
            Comparator.comparingLong((Map.Entry<Integer, Long> one) -> one.getValue())
                .thenComparing(Map.Entry::getKey))
        .map(Map.Entry::getKey)
        .orElse(0);
  }

  /** The share of records that have the commonest width, in percent. */
  public int share() {
    long all = all();
    return all == 0 ? 0 : (int) (counts.getOrDefault(commonest(), 0L) * 100 / all);
  }

  /** How many records there are. */
  public long all() {
    return counts.values().stream().mapToLong(count -> count).sum();
  }
}
