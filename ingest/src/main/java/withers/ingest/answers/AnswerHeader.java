package withers.ingest.answers;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.answers.AnswerColumn;
import withers.answers.SheetWords;

/**
 * The header of a list's sheet, in any order and with any other columns between.
 *
 * @param places where each column stands that is there, from 0; where two have one name, the first
 */
record AnswerHeader(Map<AnswerColumn, Integer> places) {

  AnswerHeader {
    places = Map.copyOf(places);
  }

  /**
   * Reads one; empty when these cells are none: it names the follow-ups, and tells something of
   * them.
   *
   * @param words in the languages that it may be written in
   */
  static Optional<AnswerHeader> of(List<String> cells, List<SheetWords> words) {
    Map<AnswerColumn, Integer> places = new EnumMap<>(AnswerColumn.class);
    for (int i = 0; i < cells.size(); i++) {
      int place = i;
      String cell = cells.get(i);
      words.stream()
          .flatMap(one -> one.column(cell).stream())
          .findFirst()
          .ifPresent(column -> places.putIfAbsent(column, place));
    }
    boolean isAnswers =
        places.containsKey(AnswerColumn.REFERENCE)
            && Stream.of(AnswerColumn.values())
                .anyMatch(one -> one.isTelling() && places.containsKey(one));
    return isAnswers ? Optional.of(new AnswerHeader(places)) : Optional.empty();
  }
}
