package withers.registration;

import java.time.LocalDate;
import withers.chip.ChipNumber;
import withers.finding.Who;
import withers.history.Statement;
import withers.id.OrganisationId;

/**
 * A registry's record of a chip that holds now.
 *
 * @param statement the registry's last word
 * @param day the registration day of docs/findings.md
 * @param primary whom the registry calls first; nobody when the record names none
 */
public record LiveRegistration(
    ChipNumber chip, OrganisationId registry, Statement statement, LocalDate day, Who primary) {}
