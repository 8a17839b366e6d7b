package withers.audit;

import java.time.LocalDate;
import java.util.List;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;

/**
 * Animals were marked as confidential, or a mark was lifted: nothing is told of them.
 *
 * @param references the person because of whom, as far as known; none when numbers were named
 * @param records those that name the person: next month's may spell the details otherwise
 * @param numbers the chips of the animals
 * @param lifted whether marks of these are taken away
 */
public record Confidential(
    LocalDate on,
    String by,
    String reason,
    List<ContactRef> references,
    List<RecordName> records,
    List<ChipNumber> numbers,
    boolean lifted)
    implements AuditEvent {
  public Confidential {
    references = List.copyOf(references);
    records = List.copyOf(records);
    numbers = List.copyOf(numbers);
  }
}
