package withers.run;

import java.util.ArrayList;
import java.util.List;
import withers.history.Animal;
import withers.history.History;
import withers.rule.Assessment;
import withers.rule.Rules;

/**
 * What phase 1 makes of one partition: chips that stand alone are judged, the others put off.
 *
 * @param animals how many were judged
 * @param telling the assessments that say something
 * @param deferred histories of chips that may belong together with something elsewhere
 */
record StandAlone(long animals, List<Assessment> telling, List<History> deferred) {

  static StandAlone judge(int partition, PartitionReader reader, Unplaced unplaced, Rules rules) {
    List<Assessment> telling = new ArrayList<>();
    List<History> deferred = new ArrayList<>();
    long animals = 0;
    List<History> histories = reader.histories(partition).toList();
    rules.prepare(histories);
    for (History history : histories) {
      if (history.pairedWith().findAny().isPresent() || unplaced.concerns(history)) {
        deferred.add(history);
      } else {
        animals++;
        Assessment assessment = rules.assess(Animal.of(List.of(history)));
        if (!assessment.isClear()) {
          telling.add(assessment);
        }
      }
    }
    return new StandAlone(animals, telling, deferred);
  }
}
