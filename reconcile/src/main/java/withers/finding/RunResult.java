package withers.finding;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.cases.CaseKey;
import withers.packed.LazyList;

/**
 * What one run found: immutable, and all that the lists are made from.
 *
 * @param id the run's name: the day it judged and a short digest of what it found
 * @param asOf the day that it judged
 * @param knownBy the day up to which exports were read, if limited
 * @param animals how many animals the log tells of
 * @param findings in total order: band, then harm descending, then case key
 * @param notJudged in order of registry, reason and anchor
 * @param questions what a human may be able to tell of animals of which no list says anything else:
 *     the newest keepers first
 * @param opened follow-ups that this run saw first
 * @param stillOpen follow-ups open before and found again, or not judged
 * @param closed follow-ups that the data closed
 * @param backlogs what organisations began with, in the order of their ids
 * @param aside those of the follow-ups above that are counted in the overview and shown on no list,
 *     in order
 * @param settled follow-ups that people settled and that are therefore not among the above, in
 *     order; those that were open before are closed by this run
 * @param lives how the follow-ups that are open stand, and those that were answered before the data
 *     closed them, in order; none in runs of earlier versions of this program
 */
public record RunResult(
    String id,
    LocalDate asOf,
    Optional<LocalDate> knownBy,
    long animals,
    List<Finding> findings,
    List<NotJudged> notJudged,
    List<OpenQuestion> questions,
    List<CaseKey> opened,
    List<CaseKey> stillOpen,
    List<CaseKey> closed,
    List<Backlog> backlogs,
    List<CaseKey> aside,
    List<CaseKey> settled,
    List<Life> lives) {
  public RunResult {
    findings = LazyList.copyOf(findings);
    notJudged = List.copyOf(notJudged);
    questions = List.copyOf(questions);
    opened = List.copyOf(opened);
    stillOpen = List.copyOf(stillOpen);
    closed = List.copyOf(closed);
    backlogs = List.copyOf(backlogs);
    aside = List.copyOf(aside);
    settled = List.copyOf(settled);
    lives = List.copyOf(lives);
  }
}
