package withers.report.privacy;

import java.time.LocalDate;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;

/**
 * A statement on the log that names somebody.
 *
 * @param record of the source that states it
 * @param about the chip number, or what else it is about
 * @param role as whom it names the person: keeper, giver, client
 * @param exportDate when the source said so
 */
public record Mention(
    ContactRef reference, RecordName record, String about, String role, LocalDate exportDate) {}
