package withers.contact;

import java.text.Normalizer;

/**
 * The bytes that a contact's reference is made from. Frozen: changing them changes every reference,
 * and so severs the log from the vault. Better normalisation belongs beside it, never here.
 *
 * <p>They are the {@link TaggedFields} of the contact's texts after Unicode normalisation NFC and
 * stripping of white space at both ends. White space inside, case and punctuation stay as they are:
 * the fewer rules, the surer they stay the same. Empty fields are left out, so that a field added
 * later, under a new tag, leaves the forms of contacts without it as they are.
 */
final class CanonicalForm {

  private CanonicalForm() {}

  static byte[] of(Contact contact) {
    return TaggedFields.write(contact, CanonicalForm::canonical);
  }

  private static String canonical(String text) {
    String composed = Ascii.isAscii(text) ? text : Normalizer.normalize(text, Normalizer.Form.NFC);
    return composed.strip();
  }
}
