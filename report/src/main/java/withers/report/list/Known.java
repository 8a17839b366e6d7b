package withers.report.list;

import java.time.LocalDate;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.finding.Finding;
import withers.mailing.LastMail;
import withers.rule.HeldBack;

/**
 * What a reader knows of before it gets a list: what its last mail told, or, where none came
 * through, what the run before saw.
 *
 * @param opened what this run saw first
 * @param names references of what was found for the reader: an animal's follow-up has one for each
 *     of its chips, and may have been told of by any
 * @param open references of all that is open for the reader
 * @param kept references by which something is open or was, and which people settled: of these none
 *     counts as closed by the data
 */
record Known(
    Optional<LastMail> last,
    Set<CaseKey> opened,
    Map<CaseKey, Set<String>> names,
    Set<String> open,
    Set<String> kept) {

  /** What a reader knows of, when a run has found this of its. */
  static Known of(Optional<LastMail> last, Set<CaseKey> opened, Share share) {
    return last.isPresent()
        ? compared(last, opened, share)
        : new Known(last, opened, Map.of(), Set.of(), Set.of());
  }

  /** With references, each of which is a digest: without a mail nothing is compared with them. */
  private static Known compared(Optional<LastMail> last, Set<CaseKey> opened, Share share) {
    Map<CaseKey, Set<String>> names =
        share.findings().stream()
            .collect(
                Collectors.toMap(
                    Finding::caseKey, one -> references(HeldBack.names(one)), (one, same) -> one));
    Set<String> open =
        references(Stream.concat(share.opened().stream(), share.stillOpen().stream()));
    Set<String> kept = new HashSet<>(open);
    kept.addAll(references(share.settled().stream()));
    names.values().forEach(kept::addAll);
    return new Known(last, opened, names, open, kept);
  }

  private static Set<String> references(Stream<CaseKey> keys) {
    return keys.map(Reference::of).collect(Collectors.toUnmodifiableSet());
  }

  /** The day of the last mail. */
  Optional<LocalDate> since() {
    return last.map(LastMail::on);
  }

  boolean isNew(CaseKey key) {
    return last.map(mail -> !isTold(key, mail)).orElseGet(() -> opened.contains(key));
  }

  private boolean isTold(CaseKey key, LastMail mail) {
    return !Collections.disjoint(names.getOrDefault(key, Set.of(Reference.of(key))), mail.told());
  }

  /**
   * How many follow-ups the data closed.
   *
   * @param byThisRun how many this run closed
   */
  int settled(int byThisRun) {
    return last.map(mail -> (int) mail.told().stream().filter(one -> !kept.contains(one)).count())
        .orElse(byThisRun);
  }

  /**
   * References of what the reader knows of once it is told of these, too: of what goes on under
   * another chip the present one.
   */
  List<String> with(List<Finding> listed) {
    Set<String> told = new TreeSet<>();
    listed.forEach(finding -> told.add(Reference.of(finding.caseKey())));
    last.ifPresent(mail -> told.addAll(stillKnown(mail)));
    return List.copyOf(told);
  }

  private List<String> stillKnown(LastMail mail) {
    Stream<String> unchanged = mail.told().stream().filter(open::contains);
    Stream<String> found =
        names.keySet().stream().filter(key -> isTold(key, mail)).map(Reference::of);
    return Stream.concat(unchanged, found).toList();
  }
}
