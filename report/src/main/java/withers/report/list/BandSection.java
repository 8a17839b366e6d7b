package withers.report.list;

import java.util.List;
import withers.finding.Band;

/** What should be done by when: the tasks of one band, in the order of the kinds. */
public record BandSection(Band band, List<Task> tasks) {
  public BandSection {
    tasks = List.copyOf(tasks);
  }

  /** How many follow-ups there are. */
  public int size() {
    return tasks.stream().mapToInt(task -> task.followUps().size()).sum();
  }

  /** How many of them bear this mark. */
  public int size(Mark mark) {
    return (int)
        tasks.stream()
            .flatMap(task -> task.followUps().stream())
            .filter(followUp -> followUp.mark() == mark)
            .count();
  }
}
