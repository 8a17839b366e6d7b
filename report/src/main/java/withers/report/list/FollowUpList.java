package withers.report.list;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.finding.FindingKind;
import withers.organisation.Organisation;

/**
 * What one organisation is told after a run.
 *
 * @param organisation the reader
 * @param run the run's id
 * @param asOf the day that the run judged
 * @param bands the bands that have follow-ups, the most urgent first
 * @param questions what the reader may be able to tell; no follow-ups, and never a list's only
 *     reason
 * @param since the day of the last mail that came through to the reader, if any did: what is new,
 *     still open and settled is told from there, else from the run before
 * @param settled how many of its follow-ups the data closed since then
 * @param settledByPeople how many are not listed because a person settled them
 * @param waiting how many stay open although this run could not judge them; they are not listed
 * @param backlog what is left of what the organisation began with; empty when nothing is
 * @param resting what is open and not listed for now, because it was answered or put off
 * @param told references of what the reader knows of once it has the list, in order: of all that is
 *     listed, and of what it was told of before and is open without being listed
 */
public record FollowUpList(
    Organisation organisation,
    String run,
    LocalDate asOf,
    List<BandSection> bands,
    List<Question> questions,
    Optional<LocalDate> since,
    int settled,
    int settledByPeople,
    int waiting,
    Optional<Beginning> backlog,
    List<Resting> resting,
    List<String> told) {
  public FollowUpList {
    bands = List.copyOf(bands);
    questions = List.copyOf(questions);
    resting = List.copyOf(resting);
    told = List.copyOf(told);
  }

  /**
   * What is left of what an organisation began with.
   *
   * @param since the day of the run that began it
   * @param followUps how many are left
   * @param waiting how many of them are not listed yet
   */
  public record Beginning(LocalDate since, int followUps, int waiting) {}

  /** How many questions are put on a page; a sheet has each. */
  static final int QUESTIONS_SHOWN = 10;

  /** The questions that a page puts. */
  public List<Question> questionsShown() {
    return questions.subList(0, Math.min(QUESTIONS_SHOWN, questions.size()));
  }

  /** How many more there are, in the sheet only. */
  public int questionsMore() {
    return questions.size() - questionsShown().size();
  }

  /** Whether it says nothing that the reader's last mail did not say. */
  public boolean isReminder() {
    return since.isPresent() && size() > 0 && size(Mark.NEW) == 0;
  }

  /** The kinds that are listed, in their order. */
  public List<FindingKind> kinds() {
    return bands.stream()
        .flatMap(band -> band.tasks().stream())
        .map(Task::kind)
        .distinct()
        .sorted()
        .toList();
  }

  /** How many follow-ups are listed. */
  public int size() {
    return bands.stream().mapToInt(BandSection::size).sum();
  }

  /** How many of them bear this mark. */
  public int size(Mark mark) {
    return bands.stream().mapToInt(band -> band.size(mark)).sum();
  }

  /** The list in figures. */
  public Listed listed() {
    return new Listed(
        organisation,
        run,
        asOf,
        size(),
        size(Mark.NEW),
        settled,
        settledByPeople,
        backlog.map(Beginning::waiting).orElse(0),
        told);
  }
}
