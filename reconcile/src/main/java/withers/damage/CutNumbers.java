package withers.damage;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.LostDigits;
import withers.fact.Fact;
import withers.history.History;
import withers.history.Sources;
import withers.history.Statement;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Tells numbers that end in zeros from numbers whose last digits a spreadsheet made zeros.
 *
 * @param sources whose records speak of the numbers
 */
public record CutNumbers(Sources sources) {

  /** One of a source's animals: by its own id, or else by the record. */
  private record OwnAnimal(SourceId source, Optional<String> id, Optional<RecordKey> key) {}

  private record OwnRecord(SourceId source, RecordKey key) {}

  /**
   * Whether the number has lost digits: it ends in zeros, and no two organisations' records agree
   * on it, or some source has two animals under it.
   */
  public boolean isCut(History history) {
    return LostDigits.endsInZeros(history.chip())
        && (organisations(history) < 2 || hasTwoAnimals(history));
  }

  private long organisations(History history) {
    return history.statements().stream()
        .map(statement -> sources.get(statement.source()).organisation())
        .distinct()
        .count();
  }

  private static boolean hasTwoAnimals(History history) {
    Map<OwnRecord, String> ids = new HashMap<>();
    linked(history).forEach(s -> ids.put(record(s), ((Fact.Linked) s.fact()).animalId()));
    Set<OwnAnimal> animals =
        history.statements().stream()
            .map(CutNumbers::record)
            .map(record -> animal(record, Optional.ofNullable(ids.get(record))))
            .collect(Collectors.toSet());
    return !animals.stream().map(OwnAnimal::source).allMatch(new HashSet<>()::add);
  }

  private static Stream<Statement> linked(History history) {
    return history.statements().stream().filter(s -> s.fact() instanceof Fact.Linked);
  }

  private static OwnRecord record(Statement statement) {
    return new OwnRecord(statement.source(), statement.key());
  }

  private static OwnAnimal animal(OwnRecord record, Optional<String> id) {
    return new OwnAnimal(
        record.source, id, id.isPresent() ? Optional.empty() : Optional.of(record.key));
  }
}
