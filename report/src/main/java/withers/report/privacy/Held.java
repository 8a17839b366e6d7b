package withers.report.privacy;

import java.time.LocalDate;
import java.util.List;

/**
 * All that is held on a person, as far as is known, in words: what somebody who asks for access is
 * owed.
 *
 * @param contacts what sources wrote of the person
 * @param said which records named the person, and as whom
 * @param followUps follow-ups of the latest run that rest on it, and when the organisation that
 *     acts was told by mail
 * @param settled what people settled about it
 * @param audit who was shown it before, and who erased what
 * @param files files of the workspace that hold the person's details, as people read their place
 */
public record Held(
    List<Contact> contacts,
    List<Said> said,
    List<FollowUp> followUps,
    List<Settled> settled,
    List<Audit> audit,
    List<String> files) {
  public Held {
    contacts = List.copyOf(contacts);
    said = List.copyOf(said);
    followUps = List.copyOf(followUps);
    settled = List.copyOf(settled);
    audit = List.copyOf(audit);
    files = List.copyOf(files);
  }

  /** A contact; the text form is not for messages. */
  public record Contact(
      String reference,
      String why,
      String name,
      List<String> phones,
      List<String> emails,
      List<String> address) {
    public Contact {
      phones = List.copyOf(phones);
      emails = List.copyOf(emails);
      address = List.copyOf(address);
    }
  }

  /** A record that names one of the contacts. */
  public record Said(
      String reference,
      String source,
      String organisation,
      String record,
      String about,
      String role,
      LocalDate on) {}

  /** A follow-up that names one of them. */
  public record FollowUp(
      String reference, String kind, String organisation, List<LocalDate> mailed) {
    public FollowUp {
      mailed = List.copyOf(mailed);
    }
  }

  /** What somebody settled about a follow-up, naming one of them. */
  public record Settled(LocalDate on, String by, String followUp, String reason) {}

  /** What was done with them before. */
  public record Audit(LocalDate on, String by, String what, String reason) {}
}
