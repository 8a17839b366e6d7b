package withers.report.list;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.finding.Finding;
import withers.mailing.LastMail;

/**
 * What a reader knows of before it gets a list: what its last mail told, or, where none came
 * through, what the run before saw.
 *
 * @param opened what this run saw first
 * @param open references of all that is open for the reader
 * @param byPeople references of what people settled, which is told of apart
 */
record Known(Optional<LastMail> last, Set<CaseKey> opened, Set<String> open, Set<String> byPeople) {

  /** What a reader knows of, when a run has found this of its. */
  static Known of(Optional<LastMail> last, Set<CaseKey> opened, Share share) {
    return new Known(
        last,
        opened,
        references(Stream.concat(share.opened().stream(), share.stillOpen().stream())),
        references(share.settled().stream()));
  }

  private static Set<String> references(Stream<CaseKey> keys) {
    return keys.map(Reference::of).collect(Collectors.toUnmodifiableSet());
  }

  /** The day of the last mail. */
  Optional<LocalDate> since() {
    return last.map(LastMail::on);
  }

  boolean isNew(CaseKey key) {
    return last.map(mail -> !mail.told().contains(Reference.of(key)))
        .orElseGet(() -> opened.contains(key));
  }

  /**
   * How many follow-ups the data closed.
   *
   * @param byThisRun how many this run closed
   */
  int settled(int byThisRun) {
    return last.map(mail -> (int) mail.told().stream().filter(this::isClosed).count())
        .orElse(byThisRun);
  }

  private boolean isClosed(String reference) {
    return !open.contains(reference) && !byPeople.contains(reference);
  }

  /** References of what the reader knows of once it is told of these, too. */
  List<String> with(List<Finding> listed) {
    Set<String> told = new TreeSet<>();
    listed.forEach(finding -> told.add(Reference.of(finding.caseKey())));
    last.ifPresent(mail -> mail.told().stream().filter(open::contains).forEach(told::add));
    return List.copyOf(told);
  }
}
