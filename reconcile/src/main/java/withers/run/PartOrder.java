package withers.run;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import withers.history.Scope;
import withers.id.ImportId;
import withers.log.EarlierSnapshot;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogUnavailableException;

/**
 * What every worker has to know of a run.
 *
 * @param imports how many imports of the log the run hears
 * @param last the last of them; empty when there is none
 */
public record PartOrder(Scope scope, int imports, Optional<ImportId> last) {

  /** A run over a log as it is. */
  static PartOrder of(LogSnapshot log, Scope scope) {
    List<ImportMarker> markers = log.markers();
    return new PartOrder(scope, markers.size(), last(markers));
  }

  private static Optional<ImportId> last(List<ImportMarker> markers) {
    return markers.stream().reduce((one, next) -> next).map(ImportMarker::id);
  }

  /** Four lines: the day that is judged, the day up to which exports are heard, imports, last. */
  String text() {
    return String.join(
        "\n",
        scope.asOf().toString(),
        scope.knownBy().map(LocalDate::toString).orElse("-"),
        String.valueOf(imports),
        last.map(id -> id.value().toString()).orElse("-"));
  }

  /**
   * Reads what {@link #text} wrote.
   *
   * @throws LogDamagedException when it is anything else
   */
  public static PartOrder read(String text) {
    String[] lines = text.split("\n", -1);
    try {
      return new PartOrder(
          new Scope(LocalDate.parse(lines[0]), stated(lines[1]).map(LocalDate::parse)),
          Integer.parseInt(lines[2]),
          stated(lines[3]).map(UUID::fromString).map(ImportId::new));
    } catch (DateTimeException | IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new LogDamagedException("Expected an order of a run, but found other text", e);
    }
  }

  private static Optional<String> stated(String line) {
    return Optional.of(line).filter(text -> !text.equals("-"));
  }

  /**
   * The log as the run hears it.
   *
   * @throws LogUnavailableException when it is another log than that of whoever ordered the work
   */
  LogSnapshot heard(LogSnapshot now) {
    if (imports <= now.markers().size()) {
      LogSnapshot then = EarlierSnapshot.of(now, imports);
      if (last(then.markers()).equals(last)) {
        return then;
      }
    }
    throw new LogUnavailableException(
        "Expected the event log that the run was ordered on, with %d imports, but found another one: let log.kafka be the same here as there"
            .formatted(imports));
  }
}
