package withers.cases;

import withers.id.OrganisationId;

/**
 * The stable identity of a follow-up: which rule, which animal (by its anchor chip) or else which
 * source's record, who has to act, and on which of its own records. Never references, rows or
 * times, so that next month's run finds the same case.
 *
 * @param rule the finding kind's name
 * @param recordKey the acting organisation's own record key, or empty when it has none
 */
public record CaseKey(String rule, Anchor anchor, OrganisationId actor, String recordKey)
    implements Comparable<CaseKey> {

  private static final java.util.Comparator<CaseKey> ORDER =
      java.util.Comparator.comparing(CaseKey::actor)
          .thenComparing(CaseKey::rule)
          .thenComparing(CaseKey::anchor)
          .thenComparing(CaseKey::recordKey);

  @Override
  public int compareTo(CaseKey other) {
    return ORDER.compare(this, other);
  }
}
