package withers.finding;

import withers.chip.ChipNumber;
import withers.id.OrganisationId;

/**
 * An animal that could not be judged, because somebody's records, mostly a registry's, are too old
 * or do not cover it. Follow-ups about it neither open nor close.
 *
 * @param anchor the animal; of a supplied box its first number
 * @param registry the organisation whose records are lacking
 */
public record NotJudged(ChipNumber anchor, OrganisationId registry, Reason reason) {

  /** What is lacking. */
  public enum Reason {
    /** Its newest export is too old. */
    EXPORT_TOO_OLD,
    /** It sends one account's slice only. */
    ACCOUNT_SLICE_ONLY,
    /** It sends no exports. */
    NEVER_EXPORTS
  }
}
