package withers.contact;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;

/**
 * The bytes that a contact's reference is made from. Frozen: changing them changes every reference,
 * and so severs the log from the vault. Better normalisation belongs beside it, never here.
 *
 * <p>The form is one byte 1, then the fields in a fixed order. A field is its tag (one byte), its
 * length in bytes (four, most significant first) and its text as UTF-8, after Unicode normalisation
 * NFC and stripping of white space at both ends; white space inside stays as it is. A field with
 * several values is written once for each, in the source's order. An empty field is left out, so
 * that a field added later, under a new tag, leaves the forms of contacts without it as they are.
 */
final class CanonicalForm {

  private static final int FORM = 1;

  private CanonicalForm() {}

  static byte[] of(Contact contact) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(128);
    out.write(FORM);
    one(out, 1, contact.name());
    one(out, 2, contact.givenName());
    one(out, 3, contact.familyName());
    each(out, 4, contact.phones());
    each(out, 5, contact.emails());
    each(out, 6, contact.addressLines());
    one(out, 7, contact.postcode());
    one(out, 8, contact.town());
    one(out, 9, contact.region());
    one(out, 10, contact.country());
    return out.toByteArray();
  }

  private static void each(ByteArrayOutputStream out, int tag, List<String> values) {
    values.forEach(value -> one(out, tag, value));
  }

  private static void one(ByteArrayOutputStream out, int tag, String value) {
    String text = Normalizer.normalize(value, Normalizer.Form.NFC).strip();
    if (!text.isEmpty()) {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      out.write(tag);
      out.writeBytes(ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).array());
      out.writeBytes(bytes);
    }
  }
}
