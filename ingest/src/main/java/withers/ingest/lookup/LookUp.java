package withers.ingest.lookup;

import java.time.LocalDate;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.fact.Fact;
import withers.fact.LookUpAnswer;

/**
 * A registry's answer about a number.
 *
 * @param registry the registry's name, as the directory has it
 * @param day when it was asked
 * @param askedBy in which role; empty when that is not told
 */
public record LookUp(
    ChipNumber chip,
    String registry,
    LookUpAnswer answer,
    LocalDate day,
    Optional<String> askedBy) {

  Fact.LookedUp fact() {
    return new Fact.LookedUp(registry, answer, askedBy);
  }
}
