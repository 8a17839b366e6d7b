package withers.report.watch;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.log.Tally;
import withers.report.schedule.JobState;

/**
 * How a workspace stands: what ran, what is due, and what waits for somebody. Ids and numbers, and
 * no details of anyone.
 *
 * @param jobs of the schedule, in its order
 * @param imports the latest of each source, by its id
 * @param imported what became of all rows that were ever imported
 * @param run the latest one; empty before the first
 * @param mails how many lists are at each step of being sent, by its name in lower case
 * @param unsure of these recipients nobody knows whether they got their list
 * @param refused files in the inbox that could not be taken, each with the reason
 * @param quarantine files of rows that could not be read
 * @param logBytes size of the embedded log
 */
public record Standing(
    List<Job> jobs,
    List<Import> imports,
    Tally imported,
    Optional<Run> run,
    Map<String, Long> mails,
    List<String> unsure,
    Map<String, String> refused,
    List<String> quarantine,
    long logBytes) {

  public Standing {
    jobs = List.copyOf(jobs);
    imports = List.copyOf(imports);
    mails = Map.copyOf(mails);
    unsure = List.copyOf(unsure);
    refused = Map.copyOf(refused);
    quarantine = List.copyOf(quarantine);
  }

  /** A job, what was done of it, and when it is due next. */
  public record Job(String name, JobState state, Optional<Instant> next) {}

  /**
   * The latest import of a source.
   *
   * @param withheld export dates whose disappearances wait to be confirmed
   */
  public record Import(
      String source, LocalDate exportDate, Instant at, Tally tally, List<LocalDate> withheld) {
    public Import {
      withheld = List.copyOf(withheld);
    }
  }

  /**
   * A run.
   *
   * @param findings how many of each kind, by its word
   * @param questions how many pairs of contacts a person may be able to tell something of
   * @param madeWith rules, parameters and profiles, a line each; none when that is not known
   */
  public record Run(
      String id,
      LocalDate asOf,
      long animals,
      Map<String, Long> findings,
      long opened,
      long stillOpen,
      long closed,
      long questions,
      List<String> madeWith) {
    public Run {
      madeWith = List.copyOf(madeWith);
      findings = Map.copyOf(findings);
    }
  }
}
