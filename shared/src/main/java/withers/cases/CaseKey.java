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

  /** By actor, rule, anchor and record key; without a comparator, as a run orders them all. */
  @Override
  public int compareTo(CaseKey other) {
    int byActor = actor.compareTo(other.actor);
    int byRule = byActor != 0 ? byActor : rule.compareTo(other.rule);
    int byAnchor = byRule != 0 ? byRule : anchor.compareTo(other.anchor);
    return byAnchor != 0 ? byAnchor : recordKey.compareTo(other.recordKey);
  }
}
