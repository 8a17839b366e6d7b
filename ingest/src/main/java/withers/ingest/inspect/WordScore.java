package withers.ingest.inspect;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.Movement;
import withers.yaml.Choices;

/** What the words of a column tell beyond being words of its list. */
final class WordScore {

  /** Such words hardly stand in records of another kind. */
  private static final double CHARACTERISTIC = 6;

  private WordScore() {}

  static double of(ColumnName column, Column cells, CellWords words) {
    return switch (column) {
      case SPECIES -> distinctWords(cells, words, CellWords.Topic.SPECIES) >= 3 ? 1 : 0;
      case SEX -> cells.distinct() <= 8 ? 1 : -4;
      case INTAKE_TYPE -> direction(cells, words, Movement.Direction.IN);
      case OUTCOME_TYPE -> direction(cells, words, Movement.Direction.OUT);
      case MOVEMENT_TYPE -> bothWays(cells, words);
      case STATUS -> meanings(cells, words, CellWords.Topic.STATUS).contains("active") ? 2 : -3;
      case END_REASON -> meanings(cells, words, CellWords.Topic.STATUS).contains("active") ? -6 : 0;
      case REPORT_TYPE -> CHARACTERISTIC;
      case DECEASED -> cells.fill() > 0 ? -2 : -3;
      default -> 0;
    };
  }

  private static Set<String> meanings(Column cells, CellWords words, CellWords.Topic topic) {
    return cells.counts().keySet().stream()
        .map(cell -> words.read(topic, cell))
        .flatMap(Optional::stream)
        .map(CellWords.Meaning::ours)
        .collect(Collectors.toSet());
  }

  private static int distinctWords(Column cells, CellWords words, CellWords.Topic topic) {
    return meanings(cells, words, topic).size();
  }

  private static double direction(Column cells, CellWords words, Movement.Direction way) {
    double same = share(cells, words, way);
    return CHARACTERISTIC + (same >= 0.8 ? 3 : same >= 0.4 ? -4 : -12);
  }

  private static double bothWays(Column cells, CellWords words) {
    double in = share(cells, words, Movement.Direction.IN);
    double out = share(cells, words, Movement.Direction.OUT);
    return CHARACTERISTIC + (in >= 0.1 && out >= 0.1 ? 3 : -5);
  }

  /** Share of the cells that move an animal this way, 0 to 1. */
  private static double share(Column cells, CellWords words, Movement.Direction way) {
    long all = 0;
    long same = 0;
    for (Map.Entry<String, Integer> cell : cells.counts().entrySet()) {
      Optional<Movement.Direction> found =
          words
              .read(CellWords.Topic.MOVEMENT, cell.getKey())
              .map(meaning -> Choices.read(Movement.class, meaning.ours()))
              .flatMap(Movement::handover)
              .map(Movement.Handover::direction);
      all += found.isPresent() ? cell.getValue() : 0;
      same += found.filter(way::equals).isPresent() ? cell.getValue() : 0;
    }
    return all == 0 ? 0 : (double) same / all;
  }
}
