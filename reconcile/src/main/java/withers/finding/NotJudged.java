package withers.finding;

import withers.chip.ChipNumber;
import withers.id.OrganisationId;

/**
 * An animal that could not be judged, because a registry's records are too old or do not cover it.
 * Follow-ups about it neither open nor close.
 *
 * @param registry whose records are lacking
 */
public record NotJudged(ChipNumber anchor, OrganisationId registry, Reason reason) {

  /** What is lacking. */
  public enum Reason {
    /** The registry's newest export is too old. */
    EXPORT_TOO_OLD,
    /** The registry sends one account's slice only. */
    ACCOUNT_SLICE_ONLY,
    /** The registry sends no exports. */
    NEVER_EXPORTS
  }
}
