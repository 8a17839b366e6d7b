package withers.log;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import withers.chip.ChipNumber;
import withers.id.ImportId;

/**
 * The log as it was after its first imports.
 *
 * @param log as it is now
 * @param markers the first ones, in the order of their commits
 */
public record EarlierSnapshot(LogSnapshot log, List<ImportMarker> markers, Set<ImportId> ids)
    implements LogSnapshot {

  /**
   * The log as it was.
   *
   * @param imports how many imports it had
   * @throws IllegalArgumentException when it never had so many
   */
  public static LogSnapshot of(LogSnapshot log, int imports) {
    List<ImportMarker> all = log.markers();
    if (imports > all.size()) {
      throw new IllegalArgumentException(
          "Expected a log of %d imports, but found %d".formatted(imports, all.size()));
    }
    List<ImportMarker> first = all.subList(0, imports);
    return new EarlierSnapshot(
        log, first, first.stream().map(ImportMarker::id).collect(Collectors.toSet()));
  }

  public EarlierSnapshot {
    markers = List.copyOf(markers);
    ids = Set.copyOf(ids);
  }

  @Override
  public <E> void replay(
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    log.replay(stream, partition, which.and(this::isEarlier), handler);
  }

  @Override
  public <E> void replayAbout(
      Set<ChipNumber> chips,
      LogStream<E> stream,
      int partition,
      Predicate<ImportMarker> which,
      Handler<? super E> handler) {
    log.replayAbout(chips, stream, partition, which.and(this::isEarlier), handler);
  }

  private boolean isEarlier(ImportMarker marker) {
    return ids.contains(marker.id());
  }
}
