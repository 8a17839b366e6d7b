package withers.ingest.translate;

import java.time.LocalDate;
import java.util.function.Function;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;

/**
 * What a row's statements take from outside the row.
 *
 * @param exportDate when the source said so; never part of what is said
 * @param file index of the file among those of the import
 */
public record Surroundings(
    LocalDate exportDate,
    int file,
    ChipNumberReader numbers,
    Function<Contact, ContactRef> references) {}
