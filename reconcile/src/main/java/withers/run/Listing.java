package withers.run;

import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.cases.CaseKey;
import withers.organisation.Directory;
import withers.organisation.Extra;
import withers.organisation.Organisation;
import withers.workspace.Settings;

/**
 * What lists show of what was found.
 *
 * @param directory says which organisations want what else is counted in the overview only
 * @param cap how many follow-ups of an organisation's beginning its list shows beyond those of
 *     today and this week; 0 for all
 * @param answerWait how many days the records are given to show what an organisation answered
 */
public record Listing(Directory directory, int cap, int answerWait) {

  private static final Set<String> EXTRAS =
      Stream.of(Extra.values()).map(Listing::word).collect(Collectors.toSet());

  /** With the days that are usual. */
  public Listing(Directory directory, int cap) {
    this(directory, cap, Settings.DEFAULT_ANSWER_WAIT_DAYS);
  }

  /** Whether a follow-up is counted in the overview and shown on no list. */
  boolean isAside(CaseKey key) {
    return EXTRAS.contains(key.rule())
        && directory.find(key.actor()).map(Organisation::also).orElse(Set.of()).stream()
            .noneMatch(wanted -> word(wanted).equals(key.rule()));
  }

  private static String word(Extra extra) {
    return extra.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
