package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.Vocabulary;

/** Proposes our words for the export's, and asks about those that no list has. */
final class ValueProposals {

  /** A column of more words holds no words of a list; showing them could show people. */
  private static final int MOST_WORDS = 40;

  private final Map<ColumnName, Map<String, String>> words = new EnumMap<>(ColumnName.class);
  private final List<Question> questions = new ArrayList<>();

  ValueProposals(Search.Found found, CellWords list) {
    for (Candidate candidate : found.chosen()) {
      candidate
          .field()
          .column()
          .filter(name -> Vocabulary.of(name).isPresent())
          .ifPresent(name -> propose(name, candidate.column(), list));
    }
  }

  private void propose(ColumnName name, Column column, CellWords list) {
    CellWords.Topic topic = CellWords.topic(name).orElseThrow();
    Map<String, String> ours = new TreeMap<>();
    List<String> asked = new ArrayList<>();
    for (String theirs : new TreeMap<>(column.counts()).keySet()) {
      Optional<CellWords.Meaning> meaning = list.read(topic, theirs);
      meaning.ifPresent(m -> ours.put(theirs, m.ours()));
      if (meaning.filter(CellWords.Meaning::isSure).isEmpty()) {
        asked.add(theirs + meaning.map(m -> " (perhaps " + m.ours() + ")").orElse(""));
      }
    }
    if (column.distinct() > MOST_WORDS) {
      questions.add(
          new Question(
              "values." + name.word(),
              "What do the words of %s mean? There are more than %d of them."
                  .formatted(ProposalMaker.quoted(column), MOST_WORDS),
              List.of()));
      return;
    }
    words.put(name, ours);
    if (!asked.isEmpty()) {
      questions.add(
          new Question(
              "values." + name.word(),
              "What do these words of %s mean?".formatted(ProposalMaker.quoted(column)),
              asked));
    }
  }

  Map<ColumnName, Map<String, String>> words() {
    return words;
  }

  List<Question> questions() {
    return questions;
  }
}
