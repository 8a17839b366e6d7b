package withers.report.list;

import withers.contact.Contact;
import withers.organisation.Organisation;

/** Somebody in a finding, as the reader of one list may see them. */
sealed interface Seen {

  /** The reader's own client, in full; a field that the record leaves out is empty. */
  record Client(Contact contact) implements Seen {}

  /** A person whose details were removed on request. */
  record Removed() implements Seen {}

  /** Another organisation's client, of whom the reader learns nothing but who has the details. */
  record Masked(Organisation holder) implements Seen {}

  /**
   * An organisation of the directory.
   *
   * @param self whether it is the reader
   */
  record Member(Organisation organisation, boolean self) implements Seen {}

  /**
   * An organisation that the directory does not know. Its name is not shown: nobody has vouched
   * that what the record names is not a person.
   */
  record Outside() implements Seen {}

  /** Nobody is stated. */
  record Nobody() implements Seen {}
}
